import * as v from 'valibot';
import { mostHarder } from '../exercise/levels.ts';
import { exerciseSchema, idSchema, textSchema } from './schemas.ts';

/** Exercises of one plan. */
export const mostPlanned = 300;
/** Things to say. */
export const mostPoints = 20;

/** Whole seconds; up to an hour. */
export const secondsSchema = v.pipe(v.number(), v.integer(), v.minValue(5), v.maxValue(3600));

/** The second and third level of an exercise. */
export const harderSchema = v.pipe(v.array(exerciseSchema), v.maxLength(mostHarder));

/** An exercise of a plan; whether it can be asked is `checkExercise`'s to say. */
export const plannedSchema = v.strictObject({
  /** Whoever makes the exercise names it; else whoever keeps it. */
  id: v.exactOptional(idSchema<string>()),
  part: v.optional(v.picklist(['warm-up', 'new', 'check']), 'new'),
  exercise: exerciseSchema,
  harder: v.optional(harderSchema, []),
  seconds: v.nullable(secondsSchema),
});

/** A plan as it is sent and kept. */
export const planSchema = v.strictObject({
  title: textSchema(80),
  aim: v.optional(textSchema(300, 0), ''),
  points: v.optional(v.pipe(v.array(textSchema(300)), v.maxLength(mostPoints)), []),
  exercises: v.pipe(v.array(plannedSchema), v.maxLength(mostPlanned)),
});
