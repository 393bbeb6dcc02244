export interface StepInfo {
  title: string;
  /** ISO date that the file is to carry. */
  date: string;
  programVersion: string;
}

/**
 * A STEP file as it leaves the house: the kernel's file with a head of our own (ISO 10303-21, clause 8: name, time,
 * author, organisation, preprocessor, system, authorisation), so that one piece and date give one file to the byte.
 * Throws when the bytes are no STEP file.
 */
export function stepFile(bytes: Uint8Array, { title, date, programVersion }: StepInfo): Uint8Array {
  const text = new TextDecoder().decode(bytes);
  const head = /FILE_NAME\((?:'(?:[^']|'')*'|[^'])*?\);/;
  if (!text.startsWith('ISO-10303-21;') || !head.test(text)) throw new Error('this is no STEP file');
  const name = `FILE_NAME(${quoted(title)},'${date}T00:00:00',(''),(''),'Open CASCADE Technology','Scantling ${programVersion}','');`;
  return new TextEncoder().encode(plainLetters(text.replace(head, () => name)));
}

/** A string of the file: quotes and backslashes doubled, no control characters. */
const quoted = (text: string): string =>
  `'${text
    .replace(/\p{Cc}/gu, ' ')
    .replaceAll('\\', '\\\\')
    .replaceAll("'", "''")}'`;

/** Letters beyond ASCII as every edition of ISO 10303-21 spells them: UTF-16 in hex between \X2\ and \X0\. */
const plainLetters = (text: string): string =>
  text.replace(/[^\n\r\t -~]+/gu, run => {
    const units = Array.from({ length: run.length }, (_, i) => run.charCodeAt(i));
    const hex = units.map(u => u.toString(16).toUpperCase().padStart(4, '0')).join('');
    return `\\X2\\${hex}\\X0\\`;
  });
