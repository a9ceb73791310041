import type { CutRequest } from './messages.js';
import { workOut } from './work-out.js';

addEventListener('message', ({ data }: MessageEvent<CutRequest>) => {
  postMessage(workOut(data));
});
