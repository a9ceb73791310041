/** Brings the colour that is drawn in into sight of its list, not of the page. */
export class ShownChip {
  private shown = -1;

  show(page: Element, colour: number): void {
    const list = page.querySelector<HTMLElement>('.draw-colours');
    const chip = list?.querySelector<HTMLElement>('.chip[aria-pressed=true]') ?? null;
    if (list === null || chip === null || this.shown === colour) return;
    this.shown = colour;
    list.scrollLeft = chip.offsetLeft - (list.clientWidth - chip.offsetWidth) / 2;
    list.scrollTop = chip.offsetTop - (list.clientHeight - chip.offsetHeight) / 2;
  }
}
