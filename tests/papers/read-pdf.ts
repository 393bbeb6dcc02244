/**
 * Reads back what a PDF written without compression says: enough of ISO 32000 for our own files. Fonts are found
 * by their names in each page's resources, their ToUnicode maps turn glyph numbers into text again.
 */
export interface ReadPdf {
  pages: string[];
  fonts: string[];
  info: string;
}

export function readPdf(bytes: Uint8Array): ReadPdf {
  const text = Buffer.from(bytes).toString('latin1');
  const objects = new Map<string, string>();
  for (const match of text.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(match[1]!, match[2]!);
  const body = (ref: string | undefined): string => objects.get(ref ?? '') ?? '';
  const ref = (source: string, key: string): string | undefined =>
    new RegExp(`/${key} (\\d+) 0 R`).exec(source)?.[1];
  const pages = [...objects.values()].filter(o => /\/Type \/Page\b(?!s)/.test(o));
  return {
    pages: pages.map(page => {
      const resources = body(ref(page, 'Resources'));
      const fonts = new Map<string, Map<string, string>>();
      for (const match of resources.matchAll(/\/(F\d+) (\d+) 0 R/g))
        fonts.set(match[1]!, unicodeMap(body(ref(body(match[2]), 'ToUnicode'))));
      return pageText(body(ref(page, 'Contents')), fonts);
    }),
    fonts: [...text.matchAll(/\/BaseFont \/([\w+-]+)/g)].map(m => m[1]!),
    info: [...([...objects.values()].find(o => o.includes('/Producer')) ?? '').matchAll(/(\d+) 0 R/g)]
      .map(m => body(m[1]))
      .join(' '),
  };
}

const fromHex = (hex: string): string =>
  (hex.match(/.{4}/g) ?? []).map(unit => String.fromCharCode(Number.parseInt(unit, 16))).join('');

function unicodeMap(cmap: string): Map<string, string> {
  const map = new Map<string, string>();
  for (const range of cmap.matchAll(/<([0-9a-f]{4})> <([0-9a-f]{4})> \[([^\]]*)\]/gi)) {
    const first = Number.parseInt(range[1]!, 16);
    [...range[3]!.matchAll(/<([0-9a-f ]*)>/gi)].forEach((unit, i) => {
      map.set((first + i).toString(16).padStart(4, '0'), fromHex(unit[1]!.replaceAll(' ', '')));
    });
  }
  return map;
}

function pageText(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): string {
  let current: ReadonlyMap<string, string> = new Map();
  const said: string[] = [];
  for (const match of content.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
    if (match[1] !== undefined) current = fonts.get(match[1]) ?? new Map();
    else
      said.push(
        [...match[2]!.matchAll(/<([0-9a-f]*)>/gi)]
          .flatMap(run => run[1]!.match(/.{4}/g) ?? [])
          .map(glyph => current.get(glyph.toLowerCase()) ?? '\ufffd')
          .join(''),
      );
  }
  return said.join(' ').replaceAll('\u00a0', ' ');
}
