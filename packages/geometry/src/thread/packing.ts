/**
 * How many put-ups (skeins, cards, balls) of a length it takes to cut pieces of given lengths,
 * none of them knotted together from two. Longest pieces first, each into the first put-up with
 * room: at most 11/9 of the least number plus 6/9 (Dosa 2007, The tight bound of first fit
 * decreasing bin-packing).
 *
 * @param pieces lengths, mm
 * @param putUp length of one put-up, mm; every piece must fit into one
 */
export function putUpsNeeded(pieces: readonly number[], putUp: number): number {
  const left: number[] = [];
  for (const piece of [...pieces].sort((a, b) => b - a)) {
    const place = left.findIndex((room) => room >= piece);
    if (place < 0) left.push(putUp - piece);
    else left[place] = (left[place] as number) - piece;
  }
  return left.length;
}
