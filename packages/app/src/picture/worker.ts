import { colourWarnings } from '../colour/hard-to-tell.js';
import { errorInWords } from './error-in-words.js';
import { drawSample, kindsOf, knotAspect } from './knotted.js';
import { makeChart } from './make-chart.js';
import type { Answer, Answers, Ask, PictureResult, PictureWish, Request } from './messages.js';
import { PictureSource } from './source.js';

/** The last request of each kind: an earlier one is given up at its next breath. */
const latest = new Map<Request['ask'], number>();

let source: PictureSource | null = null;

const breath = new MessageChannel();
const breathing: (() => void)[] = [];
breath.port1.onmessage = () => breathing.shift()?.();

/** Lets messages in. Unlike a timer it is never held back. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    breathing.push(resolve);
    breath.port2.postMessage(null);
  });
}

class GivenUp extends Error {}

/** Works a generator off in turns of some milliseconds. */
async function inTurns<T>(work: Generator<unknown, T>, wanted: () => boolean): Promise<T> {
  let turn = performance.now();
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    if (performance.now() - turn < 12) continue;
    await breathe();
    if (!wanted()) throw new GivenUp();
    turn = performance.now();
  }
}

async function make(wish: PictureWish, wanted: () => boolean): Promise<PictureResult> {
  if (source === null) throw new Error('No picture is open.');
  const knots = await inTurns(source.average(wish.crop, wish.size, wish.ground), wanted);
  const made = await inTurns(makeChart(knots, wish.palette, wish.name), wanted);
  return { ...made, seeThrough: knots.seeThrough, warnings: colourWarnings(made.chart) };
}

async function answer(
  request: Request,
  wanted: () => boolean,
): Promise<{ value: Answers[keyof Answers]; transfer: Transferable[] }> {
  switch (request.ask) {
    case 'open': {
      const opened = await PictureSource.open(request.file);
      if (!wanted()) {
        opened.close();
        throw new GivenUp();
      }
      // What is being made of the picture before is not wanted any more.
      latest.delete('make');
      source?.close();
      source = opened;
      const { width, height } = opened;
      const preview = await opened.preview();
      return { value: { width, height, preview }, transfer: [preview] };
    }
    case 'make':
      return { value: await make(request.wish, wanted), transfer: [] };
    case 'kinds':
      return { value: kindsOf(request.chart, request.choice), transfer: [] };
    case 'sample':
      return { value: drawSample(request.hex), transfer: [] };
    case 'aspect':
      return { value: knotAspect(request.edge), transfer: [] };
  }
}

addEventListener('message', async ({ data: { id, request } }: MessageEvent<Ask>) => {
  latest.set(request.ask, id);
  // Several requests may have come while one was worked off: only the last of them is begun.
  await breathe();
  const wanted = (): boolean => latest.get(request.ask) === id;
  let reply: Answer;
  let transfer: Transferable[] = [];
  try {
    if (!wanted()) throw new GivenUp();
    const done = await answer(request, wanted);
    reply = { id, ok: true, value: done.value };
    transfer = done.transfer;
  } catch (error) {
    reply =
      error instanceof GivenUp
        ? { id, ok: true, value: null }
        : { id, ok: false, message: errorInWords(error) };
  }
  postMessage(reply, { transfer });
});
