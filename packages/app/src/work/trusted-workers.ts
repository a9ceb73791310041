import cutWorkerAddress from '../cut/worker.js?worker&url';
import mistakesWorkerAddress from '../mistakes/worker.js?worker&url';
import pictureWorkerAddress from '../picture/worker.js?worker&url';
import chartWorkerAddress from './worker.js?worker&url';

const ADDRESSES = {
  chart: chartWorkerAddress,
  cut: cutWorkerAddress,
  mistakes: mistakesWorkerAddress,
  picture: pictureWorkerAddress,
};

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
    if (!Object.values(ADDRESSES).includes(address)) {
      throw new TypeError('Not an address of this app.');
    }
    return address;
  },
});

export function startWorker(which: keyof typeof ADDRESSES): Worker {
  const address = ADDRESSES[which];
  return new Worker(policy?.createScriptURL(address) ?? address, { type: 'module' });
}
