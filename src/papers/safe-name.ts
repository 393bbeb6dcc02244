/** Names that some systems keep for devices. */
const KEPT = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/**
 * A file name from any text: plain lower-case letters, figures and hyphens, 60 at most; never empty, never a path,
 * never a name that a system keeps for itself.
 */
export function safeName(text: string, fallback = 'job'): string {
  const plain = text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  if (plain === '') return fallback;
  return KEPT.test(plain) ? `${plain}-${fallback}` : plain;
}
