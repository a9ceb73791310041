import type { EaseRequest } from './messages.js';
import { workOut } from './work-out.js';

addEventListener('message', ({ data }: MessageEvent<EaseRequest>) => {
  postMessage(workOut(data));
});
