import { readFileSync } from 'node:fs';
import { type Chart, InputError, planAlpha, readChart } from '@halfhitch/core';
import { Fabric } from '@halfhitch/geometry';
import validator from 'gltf-validator';
import { Box3, Mesh, type MeshStandardMaterial } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { modelOfPiece } from '../../src/keep/model.js';
import { wholeStrands } from '../../src/keep/strands.js';

const OTTER: Chart = readChart(
  readFileSync(new URL('../../../../examples/otter.json', import.meta.url)),
  'otter.json',
).chart;

beforeAll(() => {
  // The exporter reads its blobs with it; Node has none.
  globalThis.FileReader ??= class {
    result: ArrayBuffer | null = null;
    onloadend: (() => void) | null = null;
    readAsArrayBuffer(blob: Blob): void {
      void blob.arrayBuffer().then((bytes) => {
        this.result = bytes;
        this.onloadend?.();
      });
    }
  } as unknown as typeof FileReader;
});

describe('the 3D model', () => {
  const plan = planAlpha(OTTER);

  test('is valid by the Khronos Group’s own validator, without errors, warnings or hints', async () => {
    const report = await validator.validateBytes(await modelOfPiece(plan));
    expect(report.mimeType).toBe('model/gltf-binary');
    expect(report.issues.messages).toEqual([]);
    expect(report.info.totalTriangleCount).toBeGreaterThan(100 * OTTER.cells.length);
    expect(report.info.materialCount).toBe(new Set(plan.strings.map((s) => s.colour)).size);
  });

  test('read by another reader has the strings, their colours and the size of the piece in metres', async () => {
    const glb = await modelOfPiece(plan, 0.8);
    const { scene } = await new GLTFLoader().parseAsync(glb.slice().buffer, '');
    const meshes: Mesh[] = [];
    scene.traverse((node) => {
      if (node instanceof Mesh) meshes.push(node);
    });
    expect(meshes.map(({ name }) => name).sort()).toEqual(plan.strings.map(({ id }) => id).sort());
    for (const { name, material } of meshes) {
      const wanted = plan.strings.find(({ id }) => id === name)?.colour;
      expect(`#${(material as MeshStandardMaterial).color.getHexString()}`).toBe(wanted);
    }
    const fabric = new Fabric(plan, { diameter: 0.8 });
    const box = new Box3().setFromObject(scene);
    const width = (box.max.x - box.min.x) * 1000;
    expect(width).toBeGreaterThan(fabric.size.width * 0.98);
    expect(width).toBeLessThan(fabric.size.width + 6);
    // Loose ends of 8 and 12 diameters hang out above and below.
    const length = (box.max.y - box.min.y) * 1000;
    expect(length).toBeCloseTo(fabric.size.length + 20 * 0.8, 0);
    expect(Math.abs(box.max.x + box.min.x) * 1000).toBeLessThan(6);
  });

  test('of a larger piece has less detail, and of one over the limit is refused', async () => {
    const stripes = (rows: number, columns: number): Chart => ({
      ...OTTER,
      rows,
      columns,
      cells: Uint8Array.from({ length: rows * columns }, (_, i) => Math.floor(i / columns / 8) % 2),
    });
    const perKnot = async (rows: number, columns: number): Promise<number> => {
      const { info } = await validator.validateBytes(
        await modelOfPiece(planAlpha(stripes(rows, columns))),
      );
      return info.totalTriangleCount / (rows * columns);
    };
    const few = await perKnot(20, 20);
    const more = await perKnot(60, 30);
    const most = await perKnot(60, 90);
    expect(more).toBeLessThan(0.7 * few);
    expect(most).toBeLessThan(0.7 * more);
    await expect(modelOfPiece(planAlpha(stripes(201, 100)))).rejects.toThrow(InputError);
  });
});

test('strands are joined where chunks cut them, with nothing lost', () => {
  const plan = planAlpha(OTTER);
  for (const rowsPerChunk of [1, 3, 10]) {
    const fabric = new Fabric(plan, { rowsPerChunk });
    const whole = wholeStrands(fabric, 1);
    const inOne = wholeStrands(new Fabric(plan, { rowsPerChunk: 100 }), 1);
    expect(whole.length).toBe(inOne.length);
    expect(lengthsOf(whole)).toEqual(lengthsOf(inOne));
  }
});

/** Length of all strands of each string, tenths of a mm. */
function lengthsOf(strands: ReturnType<typeof wholeStrands>): Record<string, number> {
  const lengths: Record<string, number> = {};
  for (const { string, points } of strands) {
    for (let i = 3; i < points.length; i += 3) {
      const at = (c: number): number => (points[i + c] as number) - (points[i + c - 3] as number);
      lengths[string] = (lengths[string] ?? 0) + Math.hypot(at(0), at(1), at(2));
    }
  }
  return Object.fromEntries(Object.entries(lengths).map(([id, mm]) => [id, Math.round(mm * 10)]));
}
