/** Keeps the best of many things, so that they need not all be held at once. */
export class BestFew<T> {
  private readonly kept: T[] = [];

  /** @param better negative when the first is better; no two may be equal */
  constructor(
    private readonly most: number,
    private readonly better: (one: T, other: T) => number,
  ) {}

  add(thing: T): void {
    const worst = this.kept.at(-1);
    if (this.kept.length === this.most && worst !== undefined && this.better(thing, worst) >= 0) {
      return;
    }
    let [low, high] = [0, this.kept.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.better(this.kept[middle] as T, thing) < 0) low = middle + 1;
      else high = middle;
    }
    this.kept.splice(low, 0, thing);
    if (this.kept.length > this.most) this.kept.pop();
  }

  /** Best first. */
  get all(): readonly T[] {
    return this.kept;
  }
}
