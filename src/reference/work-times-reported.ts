/** Times that makers and estimators have published, from very different people: for comparison, not for planning. */
import type { WorkTime } from './work-times.ts';

// biome-ignore format: a table, one operation a line
export const REPORTED_TIMES: readonly WorkTime[] = [
  { key: 'drawer-hand-dovetailed', what: 'drawer, hand-dovetailed, whole: dimension, plane, groove, four corners', low: 120, high: 120, per: 'drawer', note: 'one experienced maker; stock to fitted corners, not fitted to the case', source: 'popularwoodworking.com dovetails-in-real-time (2010)', basis: 'read' },
  { key: 'dovetail-four-corners-of-a-rough-box', what: 'dovetail, four corners of a rough box, cut and fitted by hand', low: 8.3, high: 10, per: 'box', note: 'very practised, by eye, no marking gauge; 10 incl. flush planing; author says not furniture quality', source: 'paulsellers.com 2011/11/4560', basis: 'read' },
  { key: 'dovetail-drawer-box-master-craftsman', what: 'dovetail drawer box, master craftsman, parts dimensioned', low: 20, high: 20, per: 'box', note: 'reported by a third person', source: 'fairwoodworking.wordpress.com 2012/10/11', basis: 'read' },
  { key: 'dovetail-box-four-corners', what: 'dovetail box, four corners, careful amateur: lay out tails', low: 25, high: 25, per: 'box', note: 'timed by photo stamps', source: 'fairwoodworking.wordpress.com 2012/10/11', basis: 'read' },
  { key: 'dovetail-saw-and-fret-tails', what: 'dovetail: saw and fret tails', low: 6, high: 6, per: 'corner', note: 'same log', source: 'fairwoodworking.wordpress.com 2012/10/11', basis: 'read' },
  { key: 'dovetail-chop-tail-waste', what: 'dovetail: chop tail waste', low: 12, high: 15, per: 'board end pair', note: 'same log; 6-7.5 per side', source: 'fairwoodworking.wordpress.com 2012/10/11', basis: 'read' },
  { key: 'dovetail-saw-and-fret-pins', what: 'dovetail: transfer, saw and fret pins', low: 12, high: 17, per: 'corner', note: 'same log', source: 'fairwoodworking.wordpress.com 2012/10/11', basis: 'read' },
  { key: 'dovetail-chop-pin-waste', what: 'dovetail: chop pin waste', low: 27, high: 27, per: 'board', note: 'same log', source: 'fairwoodworking.wordpress.com 2012/10/11', basis: 'read' },
  { key: 'dovetail-first-pieces', what: 'dovetail, first pieces, thin stock, novice', low: 120, high: 240, per: 'corner', note: 'learning', source: 'chadlemay.com shopnotes', basis: 'read' },
  { key: 'dovetail-corner-by-hand-cabinet-drawers', what: 'dovetail corner by hand, cabinet drawers', low: 45, high: 45, per: 'joint', note: 'forum, weak; weak source', source: 'discusd.com carpenters thread', basis: 'read' },
  { key: 'drawer-with-lock-joint-made-by-machine', what: 'drawer with lock joint, made by machine', low: 20, high: 20, per: 'drawer', note: '3 per hour target, 4-man shop', source: 'woodweb.com Tracking_labor_time (2001)', basis: 'read' },
  { key: 'pull-out-tray-made', what: 'pull-out tray, made', low: 30, high: 30, per: 'piece', note: '2 per hour', source: 'woodweb.com Tracking_labor_time (2001)', basis: 'read' },
  { key: 'face-frame-average-cabinet', what: 'face frame, average cabinet', low: 60, high: 60, per: 'frame', note: 'high-end custom shop average', source: 'woodweb.com Tracking_labor_time (2001)', basis: 'read' },
  { key: 'cabinet-carcase-assembly', what: 'cabinet carcase assembly', low: 60, high: 60, per: 'carcase', note: 'same shop', source: 'woodweb.com Tracking_labor_time (2001)', basis: 'read' },
  { key: 'panel-cutting-back-groove', what: 'panel cutting, back groove, edge banding', low: 22, high: 22, per: 'sheet', note: '5.5 h for 15 sheets / 16 carcases; sliding saw; 21 per carcase', source: 'woodweb.com Panel_Processing_Time_with_and_without_CNC (2012)', basis: 'read' },
  { key: 'line-boring-shelf-holes', what: 'line boring shelf holes', low: 7.5, high: 7.5, per: 'carcase', note: '2 h for 16', source: 'woodweb.com Panel_Processing_Time_with_and_without_CNC (2012)', basis: 'read' },
  { key: 'raised-panel-door-stock-to-ready-for-finish', what: 'raised panel door, stock to ready for finish', low: 20, high: 20, per: 'door', note: '3 per man-hour called good, equipped shop', source: 'woodweb.com Cabinet_Door_Production_Rates (2005)', basis: 'read' },
  { key: 'raised-panel-door-factory-crew-figure', what: 'raised panel door, factory crew figure', low: 35, high: 35, per: 'door', note: '900 doors in 13 x 40 h (computed)', source: 'woodweb.com Cabinet_Door_Production_Rates (2005)', basis: 'computed' },
  { key: 'frameless-carcase-job-of-45-doors-bought-in', what: 'frameless carcase job of 45, doors bought in, cut to finished, shop total', low: 213, high: 853, per: 'carcase', note: 'computed: 2 weeks x 2 men (reply) to 4 weeks x 4 men (called slow), 40 h weeks', source: 'woodweb.com How_Long_to_Build_Cabinets (2008)', basis: 'computed' },
  { key: 'spray-painted-doors-full-schedule', what: 'spray painted doors, full schedule', low: 25, high: 25, per: 'door', note: '17 h for 41 doors + 9 pilasters: upper bound per door (computed)', source: 'woodweb.com Cabinet_Finishing_Labor_Time (2008)', basis: 'computed' },
  { key: 'kitchen-cupboard-fabricate-and-fix', what: 'kitchen cupboard, fabricate and fix, 450 x 900 high', low: 360, high: 360, per: 'm run', note: '6 h per metre', source: 'methvin.org 52-joinery', basis: 'read' },
  { key: 'square-parts', what: 'square parts from rough (all faces)', low: 4, high: 4, per: 'board foot', note: '15 bf/h', source: 'finewoodworking.com forum estimatimg-time', basis: 'read' },
  { key: 'cut-sheet', what: 'sheet cutting, all parts', low: 20, high: 20, per: 'sheet', note: '3 sheets/h', source: 'finewoodworking.com forum estimatimg-time', basis: 'read' },
];
