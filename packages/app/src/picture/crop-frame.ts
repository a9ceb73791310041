import { html, type PropertyValues, type TemplateResult } from 'lit';
import { PageElement } from '../view/page-element.js';
import { type Crop, fitCrop } from './size.js';

/** How near a corner a finger must be to take hold of it, px on the screen. */
const REACH = 26;

type Corner = { readonly right: boolean; readonly bottom: boolean };

type Drag =
  | { readonly kind: 'move'; readonly dx: number; readonly dy: number }
  /** The corner across stays where it is. */
  | { readonly kind: 'pull'; readonly x: number; readonly y: number };

const CORNERS: readonly Corner[] = [
  { right: false, bottom: false },
  { right: true, bottom: false },
  { right: false, bottom: true },
  { right: true, bottom: true },
];

/**
 * A picture with a frame round the part that is taken, dragged with a finger or the mouse. Fires
 * `crop` with the new part. The same can be typed into fields, so that none of it is read out.
 */
export class CropFrame extends PageElement {
  static override properties = {
    picture: { attribute: false },
    size: { attribute: false },
    crop: { attribute: false },
  };

  /** What is shown; may be smaller than the picture itself. */
  declare picture: ImageBitmap | null;
  /** Of the picture itself, px. */
  declare size: { readonly width: number; readonly height: number };
  declare crop: Crop;

  private drag: Drag | null = null;

  constructor() {
    super();
    this.picture = null;
    this.size = { width: 1, height: 1 };
    this.crop = { left: 0, top: 0, width: 1, height: 1 };
  }

  protected override updated(changes: PropertyValues): void {
    const { picture, crop, size } = this;
    const canvas = this.querySelector('canvas');
    if (changes.has('picture') && picture !== null && canvas !== null) {
      canvas.width = picture.width;
      canvas.height = picture.height;
      canvas.getContext('2d')?.drawImage(picture, 0, 0);
    }
    const frame = this.querySelector<HTMLElement>('.crop-window');
    if (frame === null) return;
    const share = (part: number, whole: number): string => `${(100 * part) / whole}%`;
    frame.style.left = share(crop.left, size.width);
    frame.style.top = share(crop.top, size.height);
    frame.style.width = share(crop.width, size.width);
    frame.style.height = share(crop.height, size.height);
  }

  /** Where a pointer is, px of the picture, and how many of them a pixel of the screen is. */
  private placeOf(event: PointerEvent): { x: number; y: number; scale: number } {
    const area = event.currentTarget as HTMLElement;
    const box = area.getBoundingClientRect();
    const scale = this.size.width / box.width;
    return { x: (event.clientX - box.left) * scale, y: (event.clientY - box.top) * scale, scale };
  }

  private take(event: PointerEvent): void {
    if (event.button !== 0) return;
    const { crop } = this;
    const { x, y, scale } = this.placeOf(event);
    const across = (corner: Corner): { x: number; y: number } => ({
      x: crop.left + (corner.right ? crop.width : 0),
      y: crop.top + (corner.bottom ? crop.height : 0),
    });
    const near = CORNERS.map((corner) => {
      const at = across(corner);
      return { corner, distance: Math.hypot(at.x - x, at.y - y) / scale };
    }).sort((one, other) => one.distance - other.distance)[0];
    const inside =
      x > crop.left && x < crop.left + crop.width && y > crop.top && y < crop.top + crop.height;
    if (near !== undefined && near.distance <= REACH) {
      const { right, bottom } = near.corner;
      this.drag = { kind: 'pull', ...across({ right: !right, bottom: !bottom }) };
    } else if (inside) this.drag = { kind: 'move', dx: crop.left - x, dy: crop.top - y };
    else this.drag = { kind: 'pull', x, y };
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    event.preventDefault();
  }

  private pull(event: PointerEvent): void {
    const { drag, crop, size } = this;
    if (drag === null) return;
    const place = this.placeOf(event);
    const x = Math.max(0, Math.min(size.width, place.x));
    const y = Math.max(0, Math.min(size.height, place.y));
    const wanted =
      drag.kind === 'move'
        ? {
            ...crop,
            left: Math.max(0, Math.min(size.width - crop.width, place.x + drag.dx)),
            top: Math.max(0, Math.min(size.height - crop.height, place.y + drag.dy)),
          }
        : {
            left: Math.min(x, drag.x),
            top: Math.min(y, drag.y),
            width: Math.abs(x - drag.x),
            height: Math.abs(y - drag.y),
          };
    const detail = fitCrop(wanted, size);
    this.dispatchEvent(new CustomEvent<Crop>('crop', { detail }));
  }

  private drop(): void {
    this.drag = null;
  }

  protected override render(): TemplateResult {
    return html`<div
      class="crop-area"
      aria-hidden="true"
      @pointerdown=${this.take}
      @pointermove=${this.pull}
      @pointerup=${this.drop}
      @pointercancel=${this.drop}
    >
      <canvas></canvas>
      <div class="crop-window">
        <span class="crop-corner"></span><span class="crop-corner"></span
        ><span class="crop-corner"></span><span class="crop-corner"></span>
      </div>
    </div>`;
  }
}

customElements.define('halfhitch-crop-frame', CropFrame);
