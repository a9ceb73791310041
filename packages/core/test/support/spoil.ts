import fc from 'fast-check';

/** Cuts, overwrites, doubles and drops pieces of a file. */
export function spoil(file: fc.Arbitrary<Uint8Array>): fc.Arbitrary<Uint8Array> {
  const change = fc.record({
    at: fc.nat(),
    drop: fc.oneof(fc.constant(0), fc.nat(20)),
    put: fc.uint8Array({ maxLength: 6 }),
    end: fc.oneof(fc.constant(undefined), fc.nat()),
  });
  return fc.tuple(file, fc.array(change, { minLength: 1, maxLength: 4 })).map(([bytes, changes]) =>
    changes.reduce((spoilt, { at, drop, put, end }) => {
      const start = at % (spoilt.length + 1);
      const whole = [...spoilt.slice(0, start), ...put, ...spoilt.slice(start + drop)];
      return Uint8Array.from(end === undefined ? whole : whole.slice(0, end % (whole.length + 1)));
    }, bytes),
  );
}
