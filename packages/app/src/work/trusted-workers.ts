import cutWorkerAddress from '../cut/worker.js?worker&url';
import diagonalMistakesWorkerAddress from '../diagonal/mistakes/worker.js?worker&url';
import solveWorkerAddress from '../diagonal/solve/worker.js?worker&url';
import diagonalWorkerAddress from '../diagonal/work/worker.js?worker&url';
import easeWorkerAddress from '../ease/worker.js?worker&url';
import keepWorkerAddress from '../keep/worker.js?worker&url';
import mistakesWorkerAddress from '../mistakes/worker.js?worker&url';
import pictureWorkerAddress from '../picture/worker.js?worker&url';
import chartWorkerAddress from './worker.js?worker&url';

const ADDRESSES = {
  chart: chartWorkerAddress,
  cut: cutWorkerAddress,
  diagonal: diagonalWorkerAddress,
  diagonalMistakes: diagonalMistakesWorkerAddress,
  keep: keepWorkerAddress,
  ease: easeWorkerAddress,
  mistakes: mistakesWorkerAddress,
  picture: pictureWorkerAddress,
  solve: solveWorkerAddress,
};

/** What serves the app's files without a connection; made by the build. */
const SERVICE_WORKER = './sw.js';

/** The only strings that become scripts are the workers' own addresses. */
const policy = (
  globalThis as {
    trustedTypes?: {
      createPolicy(
        name: string,
        rules: { createScriptURL(address: string): string },
      ): { createScriptURL(address: string): string };
    };
  }
).trustedTypes?.createPolicy('halfhitch', {
  createScriptURL: (address) => {
    if (address !== SERVICE_WORKER && !Object.values(ADDRESSES).includes(address)) {
      throw new TypeError('Not an address of this app.');
    }
    return address;
  },
});

export function startWorker(which: keyof typeof ADDRESSES): Worker {
  const address = ADDRESSES[which];
  return new Worker(policy?.createScriptURL(address) ?? address, { type: 'module' });
}

/** Undefined where the browser has, or lets the page have, no service worker. */
export async function registerServiceWorker(): Promise<ServiceWorkerRegistration | undefined> {
  if (!('serviceWorker' in navigator)) return undefined;
  try {
    const address = policy?.createScriptURL(SERVICE_WORKER) ?? SERVICE_WORKER;
    return await navigator.serviceWorker.register(address, { updateViaCache: 'none' });
  } catch {
    // Switched off, a private window, or no secure connection: the page works, but needs a network.
    return undefined;
  }
}
