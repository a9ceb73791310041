import { wrongInWords } from '../../work/worker-words.js';
import type { LookRequest, Told } from './messages.js';
import { explain } from './tell.js';

addEventListener('message', ({ data }: MessageEvent<LookRequest>) => {
  let told: Told;
  try {
    told = explain(data);
  } catch (error) {
    told = { what: 'problem', message: wrongInWords(error, 'pattern') };
  }
  postMessage(told);
});
