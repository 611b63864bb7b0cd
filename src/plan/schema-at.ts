import type { z } from 'zod';
import type { PlanPath } from './plan-tree.ts';
import { planJsonSchema } from './schema.ts';

type Schema = z.core.JSONSchema.BaseSchema;

/** What a schema knows at a path of a text written by it. */
export interface SchemaNames {
  /** Names known in the section there. */
  namesAt(path: PlanPath): string[];
  /** Whether a list stands there. */
  itemsAt(path: PlanPath): boolean;
  /** Whether the names there are the user's own, as those of masters are. */
  takesAnyName(path: PlanPath): boolean;
  /** What the field there is, in the words of the schema. */
  descriptionAt(path: PlanPath): string | undefined;
}

/** `json` gives the JSON Schema; it is asked once, and only when a text has a fault: one without does not pay for it. */
export function namesOfSchema(json: () => Schema): SchemaNames {
  let whole: Schema | undefined;
  const at = (path: PlanPath): Schema[] => {
    whole ??= json();
    return schemasAt(whole, path);
  };
  return {
    namesAt: (path) => at(path).flatMap((schema) => Object.keys(schema.properties ?? {})),
    itemsAt: (path) => at(path).some((schema) => asSchema(schema.items)),
    takesAnyName: (path) => at(path).some((schema) => asSchema(schema.additionalProperties)),
    descriptionAt: (path) => at(path).find((schema) => schema.description)?.description,
  };
}

/** Those of a plan. */
export const planNames = namesOfSchema(() => planJsonSchema() as Schema);

/** The schema at a path, and where it is a choice, each of its branches. */
function schemasAt(whole: Schema, path: PlanPath): Schema[] {
  return path.reduce<Schema[]>(
    (schemas, step) => schemas.flatMap((schema) => choices(under(schema, step))),
    choices(whole),
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
