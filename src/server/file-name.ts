const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** A file name that is safe on every system: small letters, figures and hyphens, no path, no device name. */
export function fileName(words: string, extension: string): string {
  const plain = words
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replaceAll(/^-+|-+$/g, '');
  const name = plain === '' || RESERVED.test(plain) ? `job-${plain}`.replace(/-$/, '') : plain;
  return `${name}.${extension}`;
}
