const KINDS = [
  'ArrayBuffer',
  'Uint8Array',
  'Uint8ClampedArray',
  'Int8Array',
  'Uint16Array',
  'Int16Array',
  'Uint32Array',
  'Int32Array',
  'Float32Array',
  'Float64Array',
] as const;

type Globals = Record<string, unknown>;

/** More than this is not given, as a machine with little memory would not. */
const MOST_GIVEN = 512 * 1024 * 1024;

/**
 * Bytes of typed arrays that some work asks for by their number, all together. Counted, not measured:
 * memory that has been let go of counts too, so the figure is the same on every machine.
 */
export function roomTaken(work: () => unknown): number {
  let taken = 0;
  const globals = globalThis as unknown as Globals;
  const before = new Map<string, unknown>();
  for (const kind of KINDS) {
    const whole = globals[kind] as (new (
      ...given: unknown[]
    ) => object) & {
      BYTES_PER_ELEMENT?: number;
    };
    before.set(kind, whole);
    globals[kind] = new Proxy(whole, {
      construct(target, given, newTarget) {
        const [size] = given as unknown[];
        if (typeof size === 'number') {
          taken += size * (target.BYTES_PER_ELEMENT ?? 1);
          if (taken > MOST_GIVEN) throw new RangeError(`${taken} bytes were asked for.`);
        }
        return Reflect.construct(target, given, newTarget) as object;
      },
    });
  }
  try {
    work();
  } finally {
    for (const [kind, whole] of before) globals[kind] = whole;
  }
  return taken;
}
