import { html, nothing, type TemplateResult } from 'lit';
import './crop-frame.js';
import { PICTURE_LIMITS } from './limits.js';
import type { Figure, PictureErrors, Typed } from './measures.js';
import type { OpenPicture } from './messages.js';
import { numberField } from './number-field.js';
import type { Crop } from './size.js';
import { type ThreadChoice, threadsField } from './threads-field.js';

/** What is ticked. */
export interface PictureChoices {
  /** Keep the proportions. */
  readonly keep: boolean;
  /** Use threads that the maker has. */
  readonly matched: boolean;
  readonly tidy: boolean;
  readonly dither: boolean;
}

/** What is filled in, and what changes it. */
export interface PictureWish {
  readonly crop: Crop;
  readonly typed: Typed;
  readonly errors: PictureErrors;
  /** Width of a knot by its height. */
  readonly aspect: number;
  readonly choices: PictureChoices;
  readonly threads: readonly ThreadChoice[];
  /** Behind what can be seen through. */
  readonly ground: string;
  setCrop(crop: Crop): void;
  fill(figure: Figure, text: string): void;
  choose(which: keyof PictureChoices, on: boolean): void;
  setThreads(threads: readonly ThreadChoice[]): void;
  setGround(hex: string): void;
}

/** @param another whether a picture is open already */
export function chooser(another: boolean, open: (file: File | undefined) => void): TemplateResult {
  const stop = (event: DragEvent): void => {
    event.preventDefault();
    event.stopPropagation();
  };
  return html`<div
    class="picture-chooser"
    @dragover=${stop}
    @drop=${(event: DragEvent) => {
      stop(event);
      open(event.dataTransfer?.files[0]);
    }}
  >
    <label class="button ${another ? '' : 'primary'}">
      ${another ? 'Another picture' : 'Choose a picture'}
      <input
        class="unseen"
        type="file"
        accept="image/png,image/jpeg,image/webp"
        @change=${(event: Event) => {
          const input = event.target as HTMLInputElement;
          const file = input.files?.[0];
          input.value = '';
          open(file);
        }}
      />
    </label>
    <p class="hint">
      PNG, JPEG or WebP of at most ${PICTURE_LIMITS.maxBytes / 2 ** 20} MiB and
      ${PICTURE_LIMITS.maxPixels / 1e6} megapixels. It stays on this device.
    </p>
  </div>`;
}

function number(wish: PictureWish, figure: Figure, label: string, unit?: string): TemplateResult {
  return numberField({
    id: `picture-${figure}`,
    label,
    ...(unit === undefined ? {} : { unit }),
    value: wish.typed[figure],
    error: wish.errors[figure],
    fill: (text) => wish.fill(figure, text),
  });
}

/** Which part of the picture is taken. */
export function cropFields(picture: OpenPicture, wish: PictureWish): TemplateResult {
  const whole = { left: 0, top: 0, width: picture.width, height: picture.height };
  return html`<fieldset>
    <legend>Part of the picture</legend>
    <halfhitch-crop-frame
      .picture=${picture.preview}
      .size=${picture}
      .crop=${wish.crop}
      @crop=${(event: CustomEvent<Crop>) => wish.setCrop(event.detail)}
    ></halfhitch-crop-frame>
    <p class="hint">
      Drag the frame or its corners, or type where it lies. The picture has ${picture.width} ×
      ${picture.height} pixels.
    </p>
    <div class="fields">
      ${number(wish, 'left', 'From the left', 'px')} ${number(wish, 'top', 'From the top', 'px')}
      ${number(wish, 'width', 'Width', 'px')} ${number(wish, 'height', 'Height', 'px')}
    </div>
    <button type="button" class="small" @click=${() => wish.setCrop(whole)}>The whole picture</button>
  </fieldset>`;
}

export function sizeFields(wish: PictureWish): TemplateResult {
  const high = (1 / wish.aspect).toFixed(2);
  return html`<fieldset>
    <legend>Size in knots</legend>
    <div class="fields">
      ${number(wish, 'columns', 'Columns', 'knots wide')} ${number(wish, 'rows', 'Rows', 'knots long')}
    </div>
    ${check(wish, 'keep', 'Keep the proportions of the picture')}
    <p class="hint">A knot is ${high} times as high as it is wide; this is reckoned with.</p>
  </fieldset>`;
}

export function colourFields(wish: PictureWish): TemplateResult {
  return html`<fieldset>
    <legend>Colours</legend>
    <div class="fields">${number(wish, 'colours', 'Colours, at most')}</div>
    ${check(wish, 'matched', 'Use my threads')}
    ${
      wish.choices.matched
        ? html`${threadsField(wish.threads, (threads) => wish.setThreads(threads))}
          ${wish.errors.threads === undefined ? nothing : html`<p class="field-error" role="alert">${wish.errors.threads}</p>`}`
        : nothing
    }
    ${check(wish, 'tidy', 'Take out stray single knots')}
    ${check(wish, 'dither', 'Mix colours by dots (dithering)')}
    ${
      wish.choices.dither
        ? html`<p class="hint">
            Dots make soft shades, and very many colour changes to
            knot.${wish.choices.tidy ? ' Stray knots are taken out, and some of the dots with them.' : ''}
          </p>`
        : nothing
    }
    <div class="field picture-ground">
      <label for="picture-ground">Behind what can be seen through</label>
      <input
        id="picture-ground"
        type="color"
        .value=${wish.ground}
        @input=${(event: Event) =>
          wish.setGround((event.target as HTMLInputElement).value.toLowerCase())}
      />
    </div>
  </fieldset>`;
}

function check(wish: PictureWish, which: keyof PictureChoices, label: string): TemplateResult {
  return html`<label class="check">
    <input
      type="checkbox"
      .checked=${wish.choices[which]}
      @change=${(event: Event) => wish.choose(which, (event.target as HTMLInputElement).checked)}
    />
    ${label}
  </label>`;
}
