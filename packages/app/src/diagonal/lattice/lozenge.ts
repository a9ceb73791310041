/** The way of the string that ties, by kind in the order of KNOT_KINDS, within a box of -1 to 1. */
const WAYS: readonly (readonly (readonly [number, number])[])[] = [
  [
    [-0.42, -0.42],
    [0.42, 0.42],
  ],
  [
    [0.42, -0.42],
    [-0.42, 0.42],
  ],
  [
    [-0.3, -0.46],
    [0.34, 0],
    [-0.3, 0.46],
  ],
  [
    [0.3, -0.46],
    [-0.34, 0],
    [0.3, 0.46],
  ],
];

/** Adds a knot's lozenge to a path, its corners rounded as thread is. */
export function addLozenge(
  path: CanvasPath,
  x: number,
  y: number,
  halfWidth: number,
  halfHeight: number,
): void {
  const corner = 0.16;
  const points: readonly (readonly [number, number])[] = [
    [0, -1],
    [1, 0],
    [0, 1],
    [-1, 0],
  ];
  points.forEach(([px, py], index) => {
    const [bx, by] = points[(index + 3) % 4] as readonly [number, number];
    const [nx, ny] = points[(index + 1) % 4] as readonly [number, number];
    const near = (ox: number, oy: number): [number, number] => [
      x + (px + (ox - px) * corner) * halfWidth,
      y + (py + (oy - py) * corner) * halfHeight,
    ];
    const [fromX, fromY] = near(bx, by);
    const [toX, toY] = near(nx, ny);
    if (index === 0) path.moveTo(fromX, fromY);
    else path.lineTo(fromX, fromY);
    path.quadraticCurveTo(x + px * halfWidth, y + py * halfHeight, toX, toY);
  });
  path.closePath();
}

/** Adds the way of the string that ties a knot of a kind to a path. */
export function addWay(
  path: CanvasPath,
  kind: number,
  x: number,
  y: number,
  halfWidth: number,
  halfHeight: number,
): void {
  WAYS[kind]?.forEach(([atX, atY], index) => {
    const [px, py] = [x + atX * halfWidth, y + atY * halfHeight];
    if (index === 0) path.moveTo(px, py);
    else path.lineTo(px, py);
  });
}
