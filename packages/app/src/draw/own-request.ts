/**
 * How another view asks that Draw begins with something new of one's own, once it is opened. Small,
 * and needs nothing: a view that only offers it loads no dialog.
 */
let wanted = false;

export function askForOwn(): void {
  wanted = true;
}

/** Whether it was asked for, once. */
export function takeOwnRequest(): boolean {
  const was = wanted;
  wanted = false;
  return was;
}
