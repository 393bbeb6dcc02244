/**
 * Where the bands of the European and traded timbers were read. The letters in brackets are those
 * the notes use. Bands span published means, not single boards.
 */
export const TL = 'treeland.de/Holz/Holzeigenschaften.html (TL; Niemz 1993; Rijsdijk & Laming 1994)';
export const BW =
  'bauwerk-parkett.com Holzeigenschaften (BW; own tests; oven-dry density; Brinell at 10 % and 7 % MC)';
export const GP = 'gottschlich-parkett.de technische-daten (GP)';
export const FPL =
  'FPL-GTR-190 (2010) and FPL-GTR-282 (2021) tables, read through a public digitisation (FPL)';
export const EW = 'jp.europeanwood.org selected European wood species pages (EW)';
export const RECALLED = 'remembered, unverified';
export const ES = 'espen.de product pages (ES; Gottwald 1970; Wagenfuehr; ARGE Holz 1998)';
export const FA = 'frey-amon.at Holzhandel pages (FA; 12 %)';
export const PP =
  'Conservation proceedings on painting panels, Table 1, p. 15; https://issuhub.com/view/index?id=5505&pageIndex=35 (PP; genus averages, green to oven-dry)';
export const GX = 'gramex-eu.com data sheets (GX)';
export const OB = 'oakbrookwoodturningsupply.com collections (OB)';
export const WF = 'woodproducts.fi table of small-clear means at 12 % (WF)';
export const CIRAD = 'docslib.org/doc/6322321 and scribd 478516899 (CIRAD Tropix sheets, mean +- sd)';
export const FT = 'frenchtimber.com French species pages (FT)';
export const LL = 'lamellegno.it treppenstufenplatten (LL)';
export const FPLT = 'docslib.org/doc/1928358 (FPLT: FPL tropical timbers, 12 % rows, psi converted)';
export const FD = 'fdocuments.net European beech sheet (FD)';
export const GA = 'gallolegnami.it (GA; Giordano, Manuale tecnico del legno)';
export const BJ = 'ballinglyjoinery.com timber pages (BJ; trade text)';
export const NW = 'nwpc.eu natural durability (NW; EN 350 list)';
export const MG = 'masgro.com scots pine (MG)';
export const FRD = 'france-douglas.com species sheet (FRD; Guide des essences de bois 2007)';
export const SA = 'docslib.org/doc/7855415 (SA; sapele sheet, converted)';
export const SE = 'serenzo.gr teak (SE)';
export const TP = 'timberpolis.gr s211414 (TP; sessile oak)';
export const WO = 'wolman.de durability (WO; EN 350-2)';
export const FS = 'fswood.com wood pages (FS)';
export const FL = 'florianinc.com European essences (FL; kg/cm2 converted)';
export const WM = 'whitmores.co.uk timber pages (WM)';
export const GB = 'gabarro.com common-walnut (GB; kg/cm2 converted)';
export const BT = 'betterwood.co lexikon (BT; differential shrinkage, % per 1 % MC)';
export const AP = 'apptimber.com larch (AP)';
export const MV =
  'UK 90 %/60 % RH movement test, https://msd.com.ua/the-technique-of-furniture-making/shrinkage-factors (MV)';
export const GT = 'globaltimber.asia European ash (GT)';
export const WB = 'woodbin.com species pages (WB)';
export const TS = 'technologystudent.com European cherry (TS)';
export const TD = 'timberdevelopment.uk wood species sycamore (TD)';
export const HH = 'homehout.nl douglas (HH)';
export const CD = 'cd3wdproject.com BRGS170 (CD; Bryce 1967)';
export const UM = 'unmuessig-timber.com species-oak (UM; 12-15 % MC)';
export const IN = 'indertat.de wiki (IN; quotes ranges; weak source)';
export const KG = 'kglist.se European ash (KG)';
export const WS = 'woodswatch.com European ash (WS; weak source)';
export const BLACK = 'woodweb.com Blackening_Reaction (Wengert 2006)';
export const DM = 'demajotimbers.com alder (DM)';
export const TA = 'taschler.info Holzarten (TA)';
export const PV = 'pavexparquet.com oak (PV)';
export const KN = 'fs.usda.gov treesearch 48449 (Knaebe 2013)';
export const WT = 'whitneysawmills.com (WT; trade body detail)';
export const ME = 'model-engineer.co.uk thread on corrosion by timber (ME; weak source)';
export const TE = 'tradingexpression.com iroko (TE)';
export const AB = 'arbawood.com teak (AB; NF EN 350-2 note)';
export const FPL135 =
  'FPL-GTR-190 (2010) Table 13-5, valid 6-14 % MC; https://issuhub.com/view/index/5801?pageIndex=307';
export const FLOOR = 'https://flooringartists.com/dimensional-change (quotes FPL, tangential only)';

/** Several sources of one figure, as one text. */
export const from = (...sources: readonly string[]): string => sources.join('; ');
