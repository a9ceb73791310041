/** Hands a file to the browser to be saved. */
export function download(
  data: string | Uint8Array<ArrayBuffer> | Blob,
  type: string,
  fileName: string,
): void {
  const blob = data instanceof Blob ? data : new Blob([data], { type });
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // Given back only when the browser has surely begun to read it.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
