/** Writes points of straight lines into arrays of these sizes: what building is measured beside. */
export function straightLines(sizes) {
  let sum = 0;
  for (const size of sizes) {
    const points = new Float32Array(size);
    for (let i = 0; i < size; i += 3) {
      points[i] = i * 0.25;
      points[i + 1] = i * 0.5;
      points[i + 2] = 1;
    }
    sum += points[size - 1];
  }
  return sum;
}
