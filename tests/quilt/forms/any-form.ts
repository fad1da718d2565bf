/** Random forms of every kind, and what is known of each from plane geometry alone. */
import fc from 'fast-check';
import type { FormField, FormSpec, FormValue } from '../../../src/quilt/forms/form-spec.ts';
import { changedForm, FORMS, type Form, type FormKind } from '../../../src/quilt/forms/forms.ts';

export type Values = Readonly<Record<string, FormValue>>;

/** As many as a test can draw quickly; a quilt may have more. */
const MOST = 12;

/** Any value that a field's own limits allow, lengths from 0.2 to 20. */
function valueFor(field: FormField): fc.Arbitrary<FormValue> {
  switch (field.type) {
    case 'count':
      return fc.integer({ min: field.min, max: Math.min(field.max, MOST) });
    case 'length':
      return fc.oneof(
        { weight: 9, arbitrary: fc.double({ min: 0.2, max: 20, noNaN: true }) },
        { weight: 1, arbitrary: fc.constant(field.zero === true ? 0 : 0.01) },
      );
    case 'angle':
      return fc.double({ min: field.min, max: field.max, noNaN: true });
    case 'choice':
      return fc.constantFrom(...field.choices.map(({ value }) => value));
    case 'switch':
      return fc.boolean();
  }
}

/** Forms whose fields are each within their limits, and no more: many can draw no block. */
export const formsWithinLimits = ({ kind, fields }: FormSpec): fc.Arbitrary<Form> =>
  fc
    .record(Object.fromEntries(fields.map((field) => [field.field, valueFor(field)])))
    .map((values) => ({ kind, ...values }) as unknown as Form);

/** Lengths that grow outward, in their order; a side of a block round its centre counts by half. */
const OUTWARD: Partial<Record<FormKind, readonly string[]>> = {
  'compass-star': ['disc', 'inner', 'outer', 'ring', 'half side'],
  'wedge-ring': ['inner', 'outer', 'half side'],
  'geese-ring': ['inner', 'outer', 'half side'],
  'geese-arc': ['inner', 'outer', 'side'],
  'spiked-arc': ['inner', 'outer', 'side'],
  'log-cabin': ['centre', 'side'],
  pineapple: ['centre', 'side'],
};

/** The same with lengths put into their order, and numbers that share out another made to, so that most of them can be drawn. */
export const likelyForms = (spec: FormSpec): fc.Arbitrary<Form> =>
  fc
    .tuple(
      formsWithinLimits(spec),
      fc.array(fc.double({ min: 0.3, max: 4, noNaN: true }), { minLength: 5, maxLength: 5 }),
    )
    .map(([form, steps]) => {
      let reached = 0;
      const lengths = (OUTWARD[form.kind] ?? []).map((name, i) => {
        reached += steps[i]!;
        return name.startsWith('half ') ? [name.slice(5), 2 * reached] : [name, reached];
      });
      if (form.kind === 'wedge-ring') {
        lengths.push(['tip', steps[3]! / 4]);
      }
      if (form.kind === 'compass-star' && steps[4]! < 2) {
        lengths[0] = ['disc', 0];
      }
      const counts = ['geese', 'spikes', 'wedges'].filter((field) => field in form);
      const given = form as unknown as Values;
      return changedForm(form, Object.fromEntries([...lengths, ...counts.map((field) => [field, given[field]])]));
    });

/** A form of each kind to begin with, and one for each of its choices and switches. */
export function startsAndChoices(unit: 'in' | 'cm'): readonly Form[] {
  return FORMS.flatMap(({ fields, start }) => {
    const first = start(unit);
    const others = fields.flatMap((field) => {
      const values =
        field.type === 'choice'
          ? field.choices.map(({ value }) => value)
          : field.type === 'switch'
            ? [true, false]
            : [];
      return values.map((value) => ({ ...first, [field.field]: value }));
    });
    return [first, ...others] as unknown as readonly Form[];
  });
}

/** The area that a form covers, by the textbook: of its square, its ring, its frame. */
export function areaCovered(form: Form, value: (field: string) => FormValue): number {
  const n = (field: string): number => value(field) as number;
  const [r, R] = [n('inner'), n('outer')];
  const hole = value('middle') === true || r === 0 ? 0 : Math.PI * r * r;
  switch (form.kind) {
    case 'wedge-ring': {
      const half = Math.PI / n('wedges');
      const round = {
        curved: Math.PI * R * R,
        flat: n('wedges') * R * R * Math.sin(half) * Math.cos(half),
        pointed: n('wedges') * R * (R - n('tip')) * Math.sin(half),
      }[value('edge') as 'curved' | 'flat' | 'pointed'];
      return (value('ground') === true ? n('side') ** 2 : round) - hole;
    }
    case 'geese-ring':
      return (value('ground') === true ? n('side') ** 2 : Math.PI * R * R) - hole;
    case 'geese-arc':
    case 'spiked-arc':
      return value('square') === true ? n('side') ** 2 : ((R * R - r * r) * n('span') * Math.PI) / 360;
    case 'hexagon-rosette':
      return (1 + 3 * n('rings') * (n('rings') + 1)) * 1.5 * Math.sqrt(3) * n('edge') ** 2;
    case 'setting-triangles': {
      const blocks = n('across') * n('down') + (n('across') - 1) * (n('down') - 1);
      return (2 * n('across') * n('down') - blocks) * n('block') ** 2;
    }
    case 'sashing': {
      const strips = value('outside') === true ? 1 : -1;
      const long = (count: string) => n(count) * n('block') + (n(count) + strips) * n('width');
      const left = value('crossing') === 'joined' ? (n('down') + strips) * n('width') * long('across') : 0;
      return long('across') * long('down') - n('across') * n('down') * n('block') ** 2 - left;
    }
    case 'border':
      return (n('across') + 2 * n('width')) * (n('down') + 2 * n('width')) - n('across') * n('down');
    default:
      return n('side') ** 2;
  }
}
