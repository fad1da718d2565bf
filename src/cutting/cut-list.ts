/** From what she wants to what must be cut: the shapes of the answer. make-cut-list.ts computes it. */
import type { LayoutJob } from '../plan/layout-job.ts';
import type { BlankShapeKind } from '../quilt/quilt.ts';
import type { Polygon } from '../shape/point.ts';

/** Everything one scheme asks to be cut, one job for each group of cloths that share blanks. */
export interface CutList {
  readonly groups: readonly Group[];
  readonly problems: readonly Problem[];
}

export interface Group {
  /** Ids of the cloths in it, joined by "+". */
  readonly id: string;
  readonly cloths: readonly string[];
  /** In the quilt's unit, cloth as washed: width and step already shrunk. */
  readonly job: LayoutJob;
  /** In the order of job.blanks and with their ids. */
  readonly blanks: readonly Blank[];
  /** What each cloth of the job is: a bolt, or a piece from the shelf. In the order of job.cloths and with their ids. */
  readonly lengths: readonly ClothLength[];
}

export interface ClothLength {
  /** Id in the job: the cloth's own id for its bolt, "cloth/piece" for a piece. */
  readonly id: string;
  readonly cloth: string;
  readonly piece: string | null;
  /** Where a one-way print's up runs; absent for other prints. No layer of it may be folded onto its head. */
  readonly oneWay?: 'along' | 'across';
}

export interface Blank {
  /** As on diagrams and bags: "A1"; "A1 mirrored" for the other hand; "A1.2" where one patch needs several kinds. */
  readonly id: string;
  readonly role: string;
  /** Spares included. */
  readonly demand: number;
  readonly spares: number;
  /** Alternatives, in the order of the job's shapes. Print's up is +y at turn 0. */
  readonly shapes: readonly CutShape[];
  /** The finished patch in the frame of the first shape's outline (print's up is +y at turn 0), arcs flattened. */
  readonly patch: Polygon;
  readonly finishedArea: number;
  /** Area of the patch with its seam allowance all round. */
  readonly sewnArea: number;
  readonly uses: readonly PatchUse[];
  /** True where the blank's print matters: an arrow is drawn. */
  readonly directional: boolean;
  /** For joined lengths (binding, backing): its id. Then uses is empty. */
  readonly joined: string | null;
}

export interface CutShape {
  readonly kind: BlankShapeKind | 'strip';
  /** Its box begins at the origin, so that what the ruler measures are whole rulers. */
  readonly outline: Polygon;
  /** The finished patch as it lies in this outline. Absent: as the blank's own `patch`. */
  readonly patch?: Polygon;
}

/** Which patches a blank serves. */
export interface PatchUse {
  readonly block: string;
  readonly unit: string;
  readonly patch: number;
  /** Index of the place among the unit's places (places.ts), and whether it is mirrored there. */
  readonly place: number;
  readonly mirrored: boolean;
  /** How many blocks it stands in: all those of its block that are turned so in the quilt, degrees from 0 to 360. */
  readonly count: number;
  readonly turn: number;
}

/** Something that stops a patch from being planned, or that she should know. */
export interface Problem {
  readonly kind: 'error' | 'warning';
  /** What and where, and what to do, in one sentence for a person. */
  readonly text: string;
  readonly role?: string;
  readonly cloth?: string;
  readonly blank?: string;
}
