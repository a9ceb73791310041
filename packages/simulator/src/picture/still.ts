import { flatPicture } from '../flat/flat-picture.js';
import { capital } from '../knot/knot-words.js';
import { MESSAGES, type Words } from '../messages/words.js';
import { frameBox } from '../thread/camera.js';
import type { Box, ThreadLine } from '../thread/thread-line.js';
import { pictureMarkup } from './markup.js';

/** How any still may be looked at and named. */
interface StillOptions {
  readonly view?: 'front' | 'back';
  readonly lang?: string;
  readonly label?: string;
  readonly decorative?: boolean;
}

interface Shown {
  readonly lines: readonly ThreadLine[];
  readonly box: Box;
  readonly size: { readonly width: number; readonly height: number };
  /** What the picture is of, and what is being done in it. */
  readonly say: (words: Words) => { readonly picture: string; readonly about: string };
}

/** Threads seen straight from the front or the back, as SVG markup with its words. */
export function stillMarkup({ lines, box, size, say }: Shown, options: StillOptions): string {
  const view = options.view === 'back' ? 'back' : 'front';
  const { width, height } = size;
  const camera = frameBox(box, {
    yaw: view === 'back' ? Math.PI : 0,
    pitch: 0,
    aspect: width / height,
  });
  const pieces = flatPicture(lines, camera, width, height);
  if (options.decorative) return pictureMarkup(pieces, size, null);
  const lang = MESSAGES.languageFor(options.lang ?? 'en');
  const words = MESSAGES.in(lang);
  const { picture, about } = say(words);
  const label = options.label ?? words('picture.from', { picture, view: words(`view.${view}`) });
  return pictureMarkup(pieces, size, { lang, label: capital(label), about });
}
