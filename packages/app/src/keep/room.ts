import { html, nothing, type TemplateResult } from 'lit';
import { figures } from '../view/figures.js';

/** Bytes used and given by the browser for all that pages of this address keep. */
export interface Room {
  readonly used: number;
  readonly given: number;
}

/** From this share on the maker is told. */
const NEARLY_FULL = 0.9;

/** The room that there is; null where the browser does not say. */
export async function roomInBrowser(): Promise<Room | null> {
  try {
    const { usage, quota } = await navigator.storage.estimate();
    return usage === undefined || quota === undefined ? null : { used: usage, given: quota };
  } catch {
    return null;
  }
}

export function roomInWords({ used, given }: Room): TemplateResult | typeof nothing {
  if (given === 0) return nothing;
  return html`<p class="hint">
    ${mebibytes(used)} used of the ${mebibytes(given)} this browser gives, with the page’s own files
    for use offline${used / given > NEARLY_FULL ? html`: <strong>nearly full</strong>` : nothing}
  </p>`;
}

function mebibytes(bytes: number): string {
  return `${figures(bytes / 1024 ** 2, 0, bytes < 1e7 ? 1 : 0)} MiB`;
}
