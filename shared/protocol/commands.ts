import * as v from 'valibot';
import type { PlanId, RoundId, SeatId, SendId, StudentId } from './ids.ts';
import { harderSchema, secondsSchema } from './plans.ts';
import { answerEntries, chartSchema, exerciseSchema, idSchema, placesSchema, textSchema } from './schemas.ts';

/** What a Stand may ask of the server. */
export const standCommandSchema = v.variant('kind', [
  v.strictObject({
    kind: v.literal('place'),
    roundId: idSchema<RoundId>(),
    sendId: idSchema<SendId>(),
    ...answerEntries,
    done: v.boolean(),
  }),
  /** "Not me": frees a shared device. */
  v.strictObject({ kind: v.literal('leave') }),
  v.strictObject({ kind: v.literal('set-alias'), alias: v.nullable(textSchema(20)) }),
]);
export type StandCommand = v.InferOutput<typeof standCommandSchema>;

const settingsSchema = v.strictObject({
  /** Names that are not on the register come in without the teacher's nod. */
  autoAdmit: v.boolean(),
  /** What the Board's scoreboard compares. */
  score: v.picklist(['class', 'teams', 'off']),
  /** Whether the end of the class lists individuals, by alias. */
  ranking: v.boolean(),
  /** Nobody new comes in or asks to; a device that has a seat comes back. Absent: not locked. */
  locked: v.exactOptional(v.boolean()),
  /**
   * Whether Stands may listen: `off` where guitars sound in one room, `turns` for whoever has the turn there, `on`
   * where everybody plays alone. Absent: off. MIDI comes by wire and is always let in.
   */
  playing: v.exactOptional(v.picklist(['off', 'turns', 'on'])),
});
export type ClassSettings = v.InferOutput<typeof settingsSchema>;

/** As many charts as a progression may have chords. */
const mostCharts = 32;

/** What a Desk may ask of the server, always about the class it is connected to. */
export const deskCommandSchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('use-plan'), planId: v.nullable(idSchema<PlanId>()) }),
  v.strictObject({
    kind: v.literal('select'),
    index: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(500)),
  }),
  v.strictObject({ kind: v.literal('ask-planned'), seconds: v.nullable(secondsSchema) }),
  v.strictObject({
    kind: v.literal('ask'),
    exercise: exerciseSchema,
    harder: v.exactOptional(harderSchema),
    seconds: v.nullable(secondsSchema),
  }),
  v.strictObject({ kind: v.literal('ask-again') }),
  v.strictObject({ kind: v.literal('hold') }),
  v.strictObject({ kind: v.literal('reveal') }),
  v.strictObject({ kind: v.literal('next') }),
  v.strictObject({ kind: v.literal('void') }),
  v.strictObject({ kind: v.literal('undo') }),
  /** One chart, or several to be walked through by one key: a progression, a map that grows. */
  v.strictObject({
    kind: v.literal('show-charts'),
    charts: v.pipe(v.array(chartSchema), v.minLength(1), v.maxLength(mostCharts)),
  }),
  v.strictObject({
    kind: v.literal('show-step'),
    at: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(mostCharts - 1)),
  }),
  v.strictObject({ kind: v.literal('show-taps'), places: placesSchema }),
  v.strictObject({ kind: v.literal('show-nothing') }),
  v.strictObject({ kind: v.literal('admit'), seatId: idSchema<SeatId>() }),
  /** Lets in every new name at once; a name on another device is asked about one by one. */
  v.strictObject({ kind: v.literal('admit-new') }),
  v.strictObject({ kind: v.literal('refuse'), seatId: idSchema<SeatId>() }),
  v.strictObject({ kind: v.literal('remove'), studentId: idSchema<StudentId>() }),
  v.strictObject({
    kind: v.literal('set-student'),
    studentId: idSchema<StudentId>(),
    name: v.optional(textSchema(40)),
    /** Factor on the time limit, private to the student. */
    moreTime: v.optional(v.picklist([1, 1.25, 1.5, 2, 3])),
    team: v.optional(v.nullable(textSchema(20))),
  }),
  /** Whose turn it is to play; null for nobody's. */
  v.strictObject({ kind: v.literal('give-turn'), studentId: v.nullable(idSchema<StudentId>()) }),
  v.strictObject({ kind: v.literal('enter'), studentId: idSchema<StudentId>(), ...answerEntries }),
  /** Counts this answer as right after all, or takes that back. */
  v.strictObject({
    kind: v.literal('accept'),
    roundId: idSchema<RoundId>(),
    studentId: idSchema<StudentId>(),
    accepted: v.boolean(),
  }),
  /** Lets a late answer count, or takes that back. */
  v.strictObject({
    kind: v.literal('count-late'),
    roundId: idSchema<RoundId>(),
    studentId: idSchema<StudentId>(),
    counted: v.boolean(),
  }),
  v.strictObject({ kind: v.literal('set-class'), settings: settingsSchema }),
  v.strictObject({ kind: v.literal('close') }),
]);
export type DeskCommand = v.InferOutput<typeof deskCommandSchema>;

/** What a socket says of itself when it connects. A Desk is known by its session cookie. */
export const handshakeSchema = v.variant('role', [
  v.object({ role: v.literal('stand'), token: v.pipe(v.string(), v.maxLength(100)) }),
  v.object({ role: v.literal('desk'), classId: idSchema<string>() }),
  v.object({ role: v.literal('board'), code: v.pipe(v.string(), v.maxLength(20)) }),
]);
export type Handshake = v.InferOutput<typeof handshakeSchema>;
