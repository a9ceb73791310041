import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { PAPERS, type PaperName } from './paper.js';

const MM = 96 / 25.4;

/**
 * Sheets that are looked at on a page narrower than paper are made smaller until they fit; printed,
 * they are as large as ever. Draws its host anew when that begins or ends to be needed.
 */
export class SheetScale implements ReactiveController {
  /** Whether there is less room than on paper. */
  narrow = false;
  private sheets: HTMLElement | null = null;
  private readonly sizes = new ResizeObserver(() => this.fit());

  constructor(private readonly host: ReactiveControllerHost & Element) {
    host.addController(this);
  }

  hostUpdated(): void {
    const sheets = this.host.querySelector<HTMLElement>('.sheets');
    if (sheets !== this.sheets) {
      this.sizes.disconnect();
      this.sheets = sheets;
      if (sheets !== null) this.sizes.observe(sheets);
    } else this.fit();
  }

  hostDisconnected(): void {
    this.sizes.disconnect();
    this.sheets = null;
  }

  private fit(): void {
    const { sheets } = this;
    if (sheets === null || sheets.clientWidth === 0) return;
    const { paddingInlineStart, paddingInlineEnd } = getComputedStyle(sheets);
    const room =
      sheets.clientWidth -
      Number.parseFloat(paddingInlineStart) -
      Number.parseFloat(paddingInlineEnd);
    const scale = Math.min(1, room / (MM * PAPERS[sheets.dataset['paper'] as PaperName].width));
    sheets.style.setProperty('--sheet-scale', scale.toFixed(4));
    if (this.narrow === scale < 1) return;
    this.narrow = scale < 1;
    this.host.requestUpdate();
  }
}
