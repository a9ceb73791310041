/** So much of a colour is enough to see that it is the one, px. */
const LEAST = 44;

/** Brings the colour that is drawn in into sight of its list, not of the page. */
export class ShownChip {
  private shown = -1;

  show(page: Element, colour: number): void {
    const list = page.querySelector<HTMLElement>('.draw-colours');
    const chip = list?.querySelector<HTMLElement>('.chip[aria-pressed=true]') ?? null;
    if (list === null || chip === null || this.shown === colour) return;
    const first = this.shown === -1;
    this.shown = colour;
    // At first the list shows where it begins, as long as the colour is in sight there.
    if (
      first &&
      chip.offsetLeft < list.clientWidth - LEAST &&
      list.clientHeight >= chip.offsetTop
    ) {
      return;
    }
    list.scrollLeft = chip.offsetLeft - (list.clientWidth - chip.offsetWidth) / 2;
    list.scrollTop = chip.offsetTop - (list.clientHeight - chip.offsetHeight) / 2;
  }
}
