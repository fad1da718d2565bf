/** Numbers for a form to begin with in a quilt that has blocks already: what goes round them begins with their sizes. */
import { type Form, faultsOfForm, formSpec, formValueOf } from './forms/forms.ts';
import type { Quilt } from './quilt.ts';
import { isFrame, laidSideBySide, quiltSize } from './quilt-size.ts';

export function startForm(kind: string, quilt: Quilt): Form {
  // The spec of a kind in the list starts with a form of that kind.
  const start = formSpec(kind).start(quilt.unit) as Form;
  if (quilt.blocks.every(isFrame)) {
    return start;
  }
  const fitted = fittedTo(start, quilt);
  return isWithinLimits(fitted) && faultsOfForm(fitted, quilt.unit).length === 0 ? fitted : start;
}

const isWithinLimits = (form: Form): boolean =>
  formSpec(form.kind).fields.every(
    (field) => field.type !== 'count' || (formValueOf(form, field.field) as number) <= field.max,
  );

function fittedTo(start: Form, quilt: Quilt): Form {
  const { abreast, rows, width } = laidSideBySide(quilt);
  const block = tidy(width / abreast);
  switch (start.kind) {
    case 'sashing':
      return { ...start, block, across: abreast, down: rows };
    case 'setting-triangles': {
      const [across, down] = onTheirCorners(countOf(quilt));
      return { ...start, block, across, down };
    }
    case 'border': {
      const size = quiltSize(quilt);
      return { ...start, across: tidy(size.width), down: tidy(size.length) };
    }
    default:
      return start;
  }
}

const countOf = ({ blocks }: Quilt): number =>
  blocks.filter((block) => !isFrame(block)).reduce((sum, { count }) => sum + count, 0);

/** The smallest setting, as square as may be, that has room for so many blocks: m by n, and (m − 1) by (n − 1) between them. */
function onTheirCorners(count: number): readonly [across: number, down: number] {
  for (let across = 1; ; across++) {
    for (const down of [across, across + 1]) {
      if (across * down + (across - 1) * (down - 1) >= count) {
        return [across, down];
      }
    }
  }
}

const tidy = (value: number): number => Math.round(value * 1e4) / 1e4;
