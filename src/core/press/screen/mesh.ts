import { figure, film, say, share } from '../../../words/say.ts';
import { fail } from '../../problem.ts';

/** A mesh as the studio knows it. What is left out is worked out by `completeMesh`. */
export interface Mesh {
  readonly perCm: number;
  readonly threadMicrons: number;
  readonly openingMicrons?: number;
  readonly openPercent?: number;
  readonly thicknessMicrons?: number;
  /** Theoretical ink volume, cm³ per m² (the same number as microns of film). */
  readonly theoreticalCm3PerM2?: number;
}

/** given: the mesh's own figure. table: the row of the usual meshes. formula: worked out from the weave. */
export type MeshSource = 'given' | 'table' | 'formula';

export interface CompleteMesh extends Required<Mesh> {
  readonly perInch: number;
  readonly from: {
    readonly openingMicrons: MeshSource;
    readonly openPercent: MeshSource;
    readonly thicknessMicrons: MeshSource;
    readonly theoreticalCm3PerM2: MeshSource;
  };
}

/** Opening w = p − d with p = 10000 / n µm. Published: mesh maker's specification table. */
export function openingOf(perCm: number, threadMicrons: number): number {
  return 10000 / perCm - threadMicrons;
}

/** Open area (w / p)², in percent. Published: same. */
export function openPercentOf(perCm: number, openingMicrons: number): number {
  return 100 * ((openingMicrons * perCm) / 10000) ** 2;
}

/** Theoretical ink volume = open area × fabric thickness. Published: wire-cloth maker, theoretical ink volume. */
export function theoreticalVolume(openPercent: number, thicknessMicrons: number): number {
  return (openPercent / 100) * thicknessMicrons;
}

/** Fabric thickness where none is known: the middle of the usual meshes, about 1.6 threads. common practice */
const thicknessInThreads = 1.6;

/** Usual meshes, per cm – thread: [perCm, thread, opening, open %, thickness, volume]. common practice, a mesh's own figures win. */
const rows: readonly (readonly [number, number, number, number, number, number])[] = [
  [32, 100, 200, 42, 165, 69],
  [43, 80, 149, 41, 130, 53],
  [48, 70, 133, 41, 115, 47],
  [55, 64, 115, 40, 98, 39],
  [77, 55, 67, 27, 88, 24],
  [77, 48, 77, 35, 75, 26],
  [90, 48, 55, 24, 78, 19],
  [100, 40, 57, 32, 65, 21],
  [110, 34, 52, 33, 55, 18],
  [120, 34, 45, 30, 55, 16],
  [120, 40, 37, 20, 65, 13],
  [140, 34, 31, 19, 56, 11],
  [150, 31, 32, 23, 48, 11],
];

export interface MeshRow extends Required<Mesh> {
  /** `77-48`: threads per cm and thread in microns. */
  readonly id: string;
  readonly perInch: number;
}

export const meshTable: readonly MeshRow[] = rows.map(
  ([perCm, threadMicrons, openingMicrons, openPercent, thicknessMicrons, theoreticalCm3PerM2]) => ({
    id: `${perCm}-${threadMicrons}`,
    perInch: Math.round((perCm * 2.54) / 5) * 5,
    perCm,
    threadMicrons,
    openingMicrons,
    openPercent,
    thicknessMicrons,
    theoreticalCm3PerM2,
  }),
);

/** Threads an inch as the trade calls a usual mesh, in fives (77/cm: 195); what the threads of any other come to. */
export function calledPerInch({ perCm, threadMicrons }: Pick<Mesh, 'perCm' | 'threadMicrons'>): number {
  return meshTable.find((row) => row.perCm === perCm && row.threadMicrons === threadMicrons)?.perInch ?? Math.round(perCm * 2.54);
}

/**
 * All figures of a mesh, each with where it came from. The mesh's own figures win, then a row of the table with the same
 * count and thread, then the geometry. Throws ProblemError when the threads leave no opening.
 */
export function completeMesh(mesh: Mesh, place = 'screen.mesh'): CompleteMesh {
  checkMesh(mesh, place);
  const row = meshTable.find((usual) => usual.perCm === mesh.perCm && usual.threadMicrons === mesh.threadMicrons);
  // A figure of the studio's own pulls those that follow from it off the row and onto the formula.
  const given = (...keys: readonly (keyof Mesh)[]): boolean => keys.some((key) => mesh[key] !== undefined);
  const pick = (key: keyof CompleteMesh['from'], rowStands: boolean, formula: () => number): [number, MeshSource] => {
    const own = mesh[key];
    if (own !== undefined) return [own, 'given'];
    return row !== undefined && rowStands ? [row[key], 'table'] : [formula(), 'formula'];
  };
  const [openingMicrons, openingFrom] = pick('openingMicrons', true, () => openingOf(mesh.perCm, mesh.threadMicrons));
  const [openPercent, openFrom] = pick('openPercent', !given('openingMicrons'), () => openPercentOf(mesh.perCm, openingMicrons));
  const [thicknessMicrons, thicknessFrom] = pick('thicknessMicrons', true, () => thicknessInThreads * mesh.threadMicrons);
  const rowVolume = !given('openingMicrons', 'openPercent', 'thicknessMicrons');
  const [theoreticalCm3PerM2, volumeFrom] = pick('theoreticalCm3PerM2', rowVolume, () => theoreticalVolume(openPercent, thicknessMicrons));
  return {
    perCm: mesh.perCm,
    perInch: mesh.perCm * 2.54,
    threadMicrons: mesh.threadMicrons,
    openingMicrons,
    openPercent,
    thicknessMicrons,
    theoreticalCm3PerM2,
    from: { openingMicrons: openingFrom, openPercent: openFrom, thicknessMicrons: thicknessFrom, theoreticalCm3PerM2: volumeFrom },
  };
}

function checkMesh(mesh: Mesh, place: string): void {
  for (const [key, value] of Object.entries(mesh)) {
    if (typeof value === 'number' && !(value > 0 && value < 10000)) {
      fail('mesh-figure', `${place}.${key}`, say('press.meshFigure', { value: figure(value, 3, false) }), say('press.copyMeshFigure'));
    }
  }
  const pitch = 10000 / mesh.perCm;
  if (mesh.threadMicrons >= pitch) {
    fail(
      'mesh-closed',
      place,
      say('press.meshClosed', { threads: figure(mesh.perCm, 2, false), pitch: film(pitch), thread: film(mesh.threadMicrons) }),
      say('press.countPerCm'),
    );
  }
  if (mesh.openPercent !== undefined && mesh.openPercent >= 100) {
    fail('mesh-open', `${place}.openPercent`, say('press.meshAllOpen', { open: share(mesh.openPercent / 100) }), say('press.copyOpenArea'));
  }
}
