/** A drawing in few colours: 0 is ground. Rows from the top, columns from the left. */
export class Ink {
  readonly cells: Uint8Array;

  constructor(
    readonly width: number,
    readonly height: number,
  ) {
    this.cells = new Uint8Array(width * height);
  }

  at(x: number, y: number): number {
    return this.cells[y * this.width + x] as number;
  }

  put(x: number, y: number, colour: number): void {
    if (x < 0 || y < 0 || x >= this.width || y >= this.height) return;
    this.cells[y * this.width + x] = colour;
  }

  /** Draws another over this one, its ground left out. */
  stamp(other: Ink, left: number, top: number): void {
    for (let y = 0; y < other.height; y++) {
      for (let x = 0; x < other.width; x++) {
        const colour = other.at(x, y);
        if (colour !== 0) this.put(left + x, top + y, colour);
      }
    }
  }

  /** Turned by a quarter: what was read from left to right is then read downwards or upwards. */
  turned(way: 'downwards' | 'upwards'): Ink {
    const turned = new Ink(this.height, this.width);
    for (let y = 0; y < this.height; y++) {
      for (let x = 0; x < this.width; x++) {
        const colour = this.at(x, y);
        if (way === 'downwards') turned.put(this.height - 1 - y, x, colour);
        else turned.put(y, this.width - 1 - x, colour);
      }
    }
    return turned;
  }
}
