/**
 * Fineness of thread and the diameter that follows from it.
 *
 * Sources: the tex system, ISO 1144 (1 tex = 1 g per km); English cotton count, 840 yards to the
 * pound, so that Ne x tex = 590.5; metric count Nm x tex = 1000. Diameter: F. T. Peirce,
 * "The geometry of cloth structure", J. Text. Inst. 28 (1937): a cotton yarn packs at a specific
 * volume of 1.1 cm3/g, so d[mm] = 0.0374 sqrt(tex).
 */

const NE_TEX = 590.5;
const NM_TEX = 1_000;

/** Specific volume of a cotton yarn, cm3/g (Peirce 1937). */
const COTTON_VOLUME = 1.1;

/**
 * Densities of fibres at 65 % relative humidity, g/cm3 (handbook values, from memory: Morton and
 * Hearle, Physical Properties of Textile Fibres). Other yarns are taken to pack as closely as
 * Peirce's cotton does, which is a guess for smooth filaments; a swatch mends it.
 */
export const FIBRE_DENSITIES = {
  cotton: 1.52,
  viscose: 1.49,
  acetate: 1.32,
  wool: 1.31,
  silk: 1.34,
  nylon: 1.14,
  polyester: 1.39,
  acrylic: 1.19,
  polypropylene: 0.91,
} as const;

export type Fibre = keyof typeof FIBRE_DENSITIES;

export const FIBRES = Object.keys(FIBRE_DENSITIES) as readonly Fibre[];

/** Tex of an English cotton count. */
export function texOfNe(count: number): number {
  return NE_TEX / count;
}

export function neOfTex(tex: number): number {
  return NE_TEX / tex;
}

/** Tex of a metric count. */
export function texOfNm(count: number): number {
  return NM_TEX / count;
}

export function nmOfTex(tex: number): number {
  return NM_TEX / tex;
}

/** Specific volume of a yarn of this fibre, cm3/g. */
export function specificVolume(fibre: Fibre): number {
  return COTTON_VOLUME * (FIBRE_DENSITIES.cotton / FIBRE_DENSITIES[fibre]);
}

/**
 * Diameter in mm of a round yarn of a linear density in tex (g/km). A yarn of `tex` mg to the
 * metre and v mm3 to the mg has a cross-section of tex v / 1000 mm2.
 */
export function diameterOfTex(tex: number, fibre: Fibre = 'cotton'): number {
  return Math.sqrt((4 * tex * specificVolume(fibre)) / (1_000 * Math.PI));
}

/** Linear density in tex of a yarn of a diameter in mm. */
export function texOfDiameter(diameter: number, fibre: Fibre = 'cotton'): number {
  return (1_000 * Math.PI * diameter * diameter) / (4 * specificVolume(fibre));
}
