import type { z } from 'zod';
import type { PlanPath } from './plan-tree.ts';
import { planJsonSchema } from './schema.ts';

type Schema = z.core.JSONSchema.BaseSchema;

/** Names known in the section at a path of the plan. */
export const namesAt = (path: PlanPath): string[] =>
  schemasAt(path).flatMap((schema) => Object.keys(schema.properties ?? {}));

/** Whether a list stands at a path. */
export const itemsAt = (path: PlanPath): boolean => schemasAt(path).some((schema) => asSchema(schema.items));

/** Whether the names at a path are the user's own, as those of masters are. */
export const takesAnyName = (path: PlanPath): boolean =>
  schemasAt(path).some((schema) => asSchema(schema.additionalProperties));

/** What the field at a path is, in the words of the schema. */
export const descriptionAt = (path: PlanPath): string | undefined =>
  schemasAt(path).find((schema) => schema.description)?.description;

let whole: Schema | undefined;

// Made once and only when a plan has a fault: a plan without one does not pay for it.
const wholeSchema = (): Schema => {
  whole ??= planJsonSchema() as Schema;
  return whole;
};

/** The schema at a path, and where it is a choice, each of its branches. */
function schemasAt(path: PlanPath): Schema[] {
  return path.reduce<Schema[]>(
    (schemas, step) => schemas.flatMap((schema) => choices(under(schema, step))),
    choices(wholeSchema()),
  );
}

function under(schema: Schema, step: PropertyKey): Schema | undefined {
  if (typeof step === 'number') return asSchema(schema.items);
  const named =
    schema.properties && Object.hasOwn(schema.properties, step) && schema.properties[String(step)];
  return asSchema(named || schema.additionalProperties);
}

const choices = (schema: Schema | undefined): Schema[] =>
  schema ? [schema, ...(schema.anyOf ?? []).flatMap((choice) => choices(asSchema(choice)))] : [];

const asSchema = (value: unknown): Schema | undefined =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Schema) : undefined;
