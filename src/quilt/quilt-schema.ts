/** The form of a quilt file, field by field. What one field says about another is checked in check-quilt.ts. */
import { z } from 'zod';
import type { FormField, FormSpec } from './forms/form-spec.ts';
import { FORMS, type Form } from './forms/forms.ts';
import { lengthIn, parseLength } from './measure.ts';
import { QUILT_FORMAT, QUILT_VERSION } from './quilt.ts';
import { found } from './say-fault.ts';
import { tracedFromSchema } from './tracing/traced-schema.ts';

const LENGTH_WANTED = 'a number in the quilt’s unit, or text with a unit such as "1 1/4 in" or "15 cm"';

const anyLength = z
  .union([z.number(), z.string()], { error: (issue) => `expected ${LENGTH_WANTED}; ${found(issue.input)}` })
  .describe('A number in the quilt’s unit, or text with its own: in, cm, mm, yd, m; fractions as "1 1/4 in"');

/** A length of which the sign is checked; a fault in the text is told with the text. */
function lengthAbove(least: 'zero' | 'zero or more') {
  return anyLength.superRefine((value, context) => {
    const fault = faultOfLength(value, least === 'zero');
    if (fault !== null) {
      context.addIssue({ code: 'custom', message: fault });
    }
  });
}

function faultOfLength(value: number | string, zeroIsTooSmall: boolean): string | null {
  try {
    if (typeof value === 'string' && parseLength(value).unit === null) {
      return `expected text with a unit, such as "${value.trim()} in"; ${found(value)}`;
    }
  } catch (error) {
    return error instanceof RangeError ? error.message : String(error);
  }
  // Any unit will do to see the sign.
  const number = lengthIn('in', value);
  if (zeroIsTooSmall ? number > 0 : number >= 0) {
    return null;
  }
  return `expected a length ${zeroIsTooSmall ? 'above zero' : 'of zero or more'}; ${found(value)}`;
}

const length = lengthAbove('zero');
const lengthOrNone = lengthAbove('zero or more');
const id = z.string().min(1);
const degrees = z.number();
const count = z.int().min(1);

const corner = z.tuple([z.number(), z.number()]);
const arc = z.strictObject({
  arc: z.strictObject({
    radius: z.number(),
    turn: z.enum(['clockwise', 'anticlockwise']),
    large: z.boolean().exactOptional(),
  }),
});
const outlineEntry = z.union([corner, arc], {
  error: (issue) =>
    `expected a corner [x, y], or {"arc": {"radius": number, "turn": "clockwise" or "anticlockwise"}} between two corners; ${found(issue.input)}`,
});

const facing = z.strictObject({
  to: z.enum(['outward', 'inward', 'clockwise', 'anticlockwise', 'upright', 'along', 'free']),
  from: z.enum(['middle', 'axis']).exactOptional(),
  edge: z.int().min(0).exactOptional(),
  sense: z.enum(['forward', 'backward']).exactOptional(),
  turned: z.number().min(-180).max(180).exactOptional(),
  within: z.number().min(0).max(180).exactOptional(),
});

const patchOwn = {
  facing: facing.exactOptional(),
  facingAt: z.record(z.string().regex(/^\d+$/), facing).exactOptional(),
  room: lengthOrNone.exactOptional(),
  hidden: z.boolean().exactOptional(),
};

const patch = z.strictObject({ number: count, role: id, outline: z.array(outlineEntry), ...patchOwn });

const unit = z.strictObject({
  id,
  name: z.string().exactOptional(),
  paper: z.boolean(),
  repeat: z.strictObject({
    count,
    from: degrees.exactOptional(),
    over: z.number().min(0).max(360).exactOptional(),
    mirrored: z.enum(['no', 'also', 'alternate']).exactOptional(),
  }),
  axis: degrees.exactOptional(),
  patches: z.array(patch).min(1),
});

/** One object for each form, its fields as the form's own list tells them. The types are the forms' own interfaces. */
const form = z.discriminatedUnion('kind', FORMS.map(formObject) as [ReturnType<typeof formObject>], {
  error: (issue) =>
    `expected a form, with a kind that is one of ${FORMS.map(({ kind }) => `"${kind}"`).join(', ')}; ${found(issue.input)}`,
}) as unknown as z.ZodType<Form>;

function formObject({ kind, fields }: FormSpec) {
  const values = fields.map((field) => {
    const value = formValue(field);
    return [field.field, field.usual === undefined ? value : value.exactOptional()] as const;
  });
  return z.strictObject({ kind: z.literal(kind), ...Object.fromEntries(values) });
}

function formValue(field: FormField) {
  switch (field.type) {
    case 'count':
      return z.int().min(field.min).max(field.max);
    case 'length':
      return field.zero === true ? lengthOrNone : length;
    case 'angle':
      return z.number().min(field.min).max(field.max);
    case 'choice':
      return z.enum(field.choices.map(({ value }) => value));
    case 'switch':
      return z.boolean();
  }
}

const block = z.strictObject({
  id,
  name: z.string(),
  count,
  turns: z.array(degrees).min(1).exactOptional(),
  form: form.exactOptional(),
  units: z.array(unit).min(1).exactOptional(),
  roles: z.record(id, id).exactOptional(),
  own: z.record(id, z.strictObject(patchOwn)).exactOptional(),
  loose: z.boolean().exactOptional(),
  traced: tracedFromSchema(length).exactOptional(),
});

const role = z.strictObject({
  id,
  name: z.string(),
  facing,
  shapes: z
    .array(z.enum(['outline', 'box', 'slant']))
    .min(1)
    .exactOptional(),
  room: lengthOrNone.exactOptional(),
  biasAllowed: z.boolean().exactOptional(),
  oneCloth: z.boolean().exactOptional(),
  spares: z.int().min(0).exactOptional(),
  hidden: z.boolean().exactOptional(),
});

const percent = z.number().min(0).max(50);

const cloth = z.strictObject({
  id,
  name: z.string(),
  colour: z.string().regex(/^#[0-9a-fA-F]{6}$/, {
    error: (issue) => `expected a colour as #rrggbb, such as "#e9b53c"; ${found(issue.input)}`,
  }),
  print: z.enum(['one-way', 'two-way', 'check', 'tossed', 'solid']),
  up: z.enum(['along', 'across']).exactOptional(),
  wrongSide: z.boolean().exactOptional(),
  repeat: length.exactOptional(),
  width: length,
  step: length.exactOptional(),
  price: z
    .strictObject({ amount: z.number().min(0), per: z.enum(['yd', 'm']), currency: z.string().exactOptional() })
    .exactOptional(),
  shrinkage: z.strictObject({ along: percent, across: percent }).exactOptional(),
  washFirst: z.boolean().exactOptional(),
  pieces: z
    .array(
      z.strictObject({
        id,
        width: length,
        length,
        count: count.exactOptional(),
        washed: z.boolean().exactOptional(),
      }),
    )
    .exactOptional(),
});

const joined = z.strictObject({
  id,
  name: z.string(),
  role: id,
  kind: z.enum(['strips', 'panels']).exactOptional(),
  follows: z.enum(['binding', 'border', 'sashing', 'backing']).exactOptional(),
  length,
  width: length,
  join: lengthOrNone,
  shortest: length.exactOptional(),
  overhang: lengthOrNone.exactOptional(),
});

const scheme = z.strictObject({
  id,
  name: z.string(),
  cloths: z.record(
    id,
    z.union([id, z.array(id).min(1)], {
      error: (issue) => `expected a cloth’s id, or a list of one or more; ${found(issue.input)}`,
    }),
  ),
});

export const quiltSchema = z
  .strictObject({
    format: z.literal(QUILT_FORMAT),
    version: z.literal(QUILT_VERSION),
    name: z.string(),
    unit: z.enum(['in', 'cm']),
    allowance: lengthOrNone,
    room: lengthOrNone,
    ruler: length,
    squaring: lengthOrNone,
    spares: z.int().min(0),
    stacks: z.boolean().exactOptional(),
    finished: z.strictObject({ width: length, length }).exactOptional(),
    keep: length.exactOptional(),
    testBlock: id.exactOptional(),
    blocks: z.array(block),
    joined: z.array(joined),
    roles: z.array(role),
    cloths: z.array(cloth),
    schemes: z.array(scheme).min(1),
    scheme: id,
  })
  .describe('A Yardwright quilt: what she has and wants');

/** The JSON Schema of a quilt file, for editors and other programs. It knows forms and kinds, not what refers to what. */
export function quiltJsonSchema(): object {
  return z.toJSONSchema(quiltSchema);
}
