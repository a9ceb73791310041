import { encode } from 'fast-png';

/** A picture of colours `#rrggbb`, one pixel for each knot. */
export class Canvas {
  constructor(width, height, ground) {
    this.width = width;
    this.height = height;
    this.pixels = Array.from({ length: width * height }, () => ground);
  }

  set(x, y, colour) {
    if (x < 0 || y < 0 || x >= this.width || y >= this.height) return;
    this.pixels[y * this.width + x] = colour;
  }

  fill(x, y, width, height, colour) {
    for (let row = y; row < y + height; row++) {
      for (let column = x; column < x + width; column++) this.set(column, row, colour);
    }
  }

  /** Puts rows of characters down, each standing for a colour; others leave what is there. */
  put(x, y, rows, colours) {
    rows.forEach((row, down) => {
      [...row].forEach((character, right) => {
        const colour = colours[character];
        if (colour !== undefined) this.set(x + right, y + down, colour);
      });
    });
  }

  /** The picture as a PNG file in true colour. */
  png() {
    const data = Uint8Array.from(
      this.pixels.flatMap((hex) =>
        [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)),
      ),
    );
    return encode({ width: this.width, height: this.height, data, channels: 3, depth: 8 });
  }
}
