/** The pure core of the library: no files, no canvas. */
declare module 'qrcode/lib/core/qrcode.js' {
  export function create(
    data: string,
    options: { errorCorrectionLevel: 'L' | 'M' | 'Q' | 'H' },
  ): { modules: { size: number; data: Uint8Array } };
}
