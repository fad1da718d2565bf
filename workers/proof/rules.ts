/** What the job allows, looked up by blank and cloth: one shape rule for each shape a blank may take on a cloth. */
import type { JobBlank, JobCloth, LayoutJob, Turns } from '../../src/plan/layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';

export interface Rules {
  readonly job: LayoutJob;
  readonly cloths: ReadonlyMap<string, JobCloth>;
  readonly blanks: ReadonlyMap<string, BlankRule>;
}

export interface BlankRule {
  readonly demand: number;
  /** By cloth id; a cloth that is absent may not serve. */
  readonly on: ReadonlyMap<string, readonly ShapeRule[]>;
}

export interface ShapeRule {
  readonly outline: Polygon;
  readonly turns: Turns;
  readonly mirror: boolean;
}

export function rulesOf(job: LayoutJob): Rules {
  return {
    job,
    cloths: new Map(job.cloths.map((cloth) => [cloth.id, cloth])),
    blanks: new Map(job.blanks.map((blank) => [blank.id, { demand: blank.demand, on: shapesByCloth(job, blank) }])),
  };
}

function shapesByCloth(job: LayoutJob, blank: JobBlank): ReadonlyMap<string, readonly ShapeRule[]> {
  const shapes = blank.shapes ?? [{ ...blank, outline: blank.outline ?? [] }];
  const choices = blank.cloths ?? job.cloths.map((cloth) => cloth.id);
  return new Map(
    choices.map((choice) => {
      const asked = typeof choice === 'string' ? { id: choice } : choice;
      const rules = shapes.map((shape) => ({
        outline: shape.outline,
        turns: asked.turns ?? shape.turns ?? [0],
        mirror: asked.mirror ?? shape.mirror ?? false,
      }));
      return [asked.id, rules];
    }),
  );
}
