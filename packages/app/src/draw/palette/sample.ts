import { drawSign } from '../sheet/signs.js';

const SIZE = { width: 30, height: 26 } as const;

/** A knot in a colour of the legend, with the sign that stands for the colour. */
export class Sample extends HTMLElement {
  private shown = '';

  /** `place`: where in the legend the colour is, from 0. */
  show(hex: string, place: number): void {
    const key = `${hex} ${place} ${devicePixelRatio}`;
    if (this.shown === key || !/^#[0-9a-f]{6}$/.test(hex)) return;
    this.shown = key;
    const canvas = this.querySelector('canvas') ?? document.createElement('canvas');
    const dpr = Math.max(1, Math.min(3, devicePixelRatio));
    canvas.width = SIZE.width * dpr;
    canvas.height = SIZE.height * dpr;
    const ctx = canvas.getContext('2d');
    if (ctx === null) return;
    ctx.fillStyle = hex;
    ctx.fillRect(0, 0, canvas.width, canvas.height);
    drawSign(ctx, place, hex, 0, 0, canvas.width, canvas.height);
    if (canvas.parentElement !== this) this.replaceChildren(canvas);
  }

  set colour({ hex, place }: { readonly hex: string; readonly place: number }) {
    this.show(hex, place);
  }

  connectedCallback(): void {
    this.setAttribute('aria-hidden', 'true');
  }
}

customElements.define('halfhitch-sample', Sample);
