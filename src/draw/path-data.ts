import type { PathItem, Run } from './display-list.ts';

/** Numbers in files are kept short; a ten-thousandth of an inch is finer than any cutter. */
export function short(value: number): string {
  const rounded = Math.round(value * 1e4) / 1e4;
  return `${Object.is(rounded, -0) ? 0 : rounded}`;
}

/** The `d` of an SVG path. y is turned over; an arc that is clockwise stays clockwise to the eye. */
export function pathData(item: PathItem): string {
  return item.runs.map(runData).join('');
}

function runData(run: Run): string {
  const steps = run.steps.map(({ to, arc }) => {
    const end = `${short(to[0])} ${short(-to[1])}`;
    if (arc === undefined) {
      return `L${end}`;
    }
    return `A${short(arc.radius)} ${short(arc.radius)} 0 ${arc.large ? 1 : 0} ${arc.clockwise ? 1 : 0} ${end}`;
  });
  return `M${short(run.start[0])} ${short(-run.start[1])}${steps.join('')}${run.closed ? 'Z' : ''}`;
}
