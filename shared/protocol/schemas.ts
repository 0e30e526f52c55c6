import * as v from 'valibot';
import { namedDegrees, type Named } from '../exercise/answer.ts';
import type { Chart, MapChart } from '../exercise/chart.ts';
import type { Exercise } from '../exercise/exercise.ts';
import type { Heard } from '../exercise/heard.ts';
import type { Fret, FretRange, Place, StringNumber } from '../theory/fretboard.ts';
import type { MidiNote, NoteName, PitchClass } from '../theory/pitch.ts';
import { chordTable, type ChordQuality } from '../theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../theory/tables/scales.ts';
import { isToneSetId, type ToneSetId } from '../theory/tone-sets.ts';
import { plainText } from './plain-text.ts';

/** Shapes of what comes from outside; parsed once, at the edge, trusted behind it. */

/** A branded string, e.g. an id: 1 to 64 characters that ids are made of. */
export function idSchema<T extends string>() {
  return v.pipe(
    v.string(),
    v.regex(/^[\w-]{1,64}$/),
    v.transform((id) => id as T),
  );
}

/** Text that a person typed, as `plainText` leaves it: `least` to `length` UTF-16 units. */
export function textSchema(length: number, least = 1) {
  return v.pipe(
    v.string(),
    v.maxLength(4 * length),
    v.transform(plainText),
    v.minLength(least),
    v.maxLength(length),
  );
}

const stringSchema = v.pipe(
  v.number(),
  v.integer(),
  v.minValue(1),
  v.maxValue(10),
  v.transform((n) => n as StringNumber),
);
const fretSchema = v.pipe(
  v.number(),
  v.integer(),
  v.minValue(0),
  v.maxValue(36),
  v.transform((n) => n as Fret),
);

export const placeSchema: v.GenericSchema<unknown, Place> = v.strictObject({
  string: stringSchema,
  fret: fretSchema,
});
export const placesSchema = v.pipe(v.array(placeSchema), v.maxLength(120));

const rangeSchema: v.GenericSchema<unknown, FretRange> = v.strictObject({
  low: fretSchema,
  high: fretSchema,
});

const noteSchema: v.GenericSchema<unknown, NoteName> = v.strictObject({
  letter: v.picklist(['C', 'D', 'E', 'F', 'G', 'A', 'B']),
  alteration: v.picklist([-2, -1, 0, 1, 2]),
});

/** Whether there is such an instrument is `instrumentById`'s to say. */
export const instrumentIdSchema = v.pipe(v.string(), v.maxLength(120));

const fingerSchema = v.picklist([1, 2, 3, 4]);

const namedSchema: v.GenericSchema<unknown, Named> = v.variant('kind', [
  v.strictObject({ kind: v.literal('note'), note: noteSchema }),
  v.strictObject({ kind: v.literal('degree'), degree: v.picklist(namedDegrees) }),
]);

const confidenceSchema = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const pitchClassSchema = v.pipe(
  v.number(),
  v.integer(),
  v.minValue(0),
  v.maxValue(11),
  v.transform((n) => n as PitchClass),
);
/** An hour and a little: nobody plays one answer that long. */
const longestPlaying = 4_000_000;

/** Pitches, times and confidence: all that ever leaves the device of what it heard (SPEC HEARD). */
export const heardSchema: v.GenericSchema<unknown, Heard> = v.variant('kind', [
  v.strictObject({
    kind: v.literal('line'),
    pitches: v.pipe(
      v.array(
        v.strictObject({
          pitch: v.pipe(
            v.number(),
            v.integer(),
            v.minValue(0),
            v.maxValue(127),
            v.transform((n) => n as MidiNote),
          ),
          at: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(longestPlaying)),
          confidence: confidenceSchema,
        }),
      ),
      v.minLength(1),
      v.maxLength(120),
    ),
  }),
  v.strictObject({
    kind: v.literal('chord'),
    tones: v.pipe(
      v.array(v.strictObject({ pitchClass: pitchClassSchema, confidence: confidenceSchema })),
      v.minLength(1),
      v.maxLength(12),
    ),
    faint: v.exactOptional(
      v.pipe(
        v.array(v.strictObject({ pitchClass: pitchClassSchema, confidence: confidenceSchema })),
        v.maxLength(12),
      ),
    ),
    lowest: v.exactOptional(pitchClassSchema),
  }),
]);

/** The fields of an answer, as `Answer` has them. */
export const answerEntries = {
  places: placesSchema,
  heard: v.exactOptional(heardSchema),
  way: v.exactOptional(v.picklist(['play', 'midi'])),
  named: v.exactOptional(namedSchema),
  root: v.exactOptional(placeSchema),
  finger: v.exactOptional(fingerSchema),
  level: v.exactOptional(v.picklist([2, 3])),
};

/** What a teacher may enter: an answer, or how it was, where what was placed isn't known. */
export const enteredEntries = {
  ...answerEntries,
  teacherSays: v.exactOptional(v.picklist(['right', 'not-yet'])),
};

const taskEntries = {
  instrument: instrumentIdSchema,
  root: noteSchema,
  rootString: stringSchema,
  strictness: v.picklist(['place', 'string', 'range', 'anywhere']),
  range: v.nullable(rangeSchema),
};

const extraEntries = {
  marksRoot: v.exactOptional(v.boolean()),
  asksFinger: v.exactOptional(v.boolean()),
};

const qualities = Object.keys(chordTable) as [ChordQuality, ...ChordQuality[]];
const scales = Object.keys(scaleTable) as [ScaleId, ...ScaleId[]];

const toneSetSchema = v.pipe(
  v.string(),
  v.check((text) => isToneSetId(text)),
  v.transform((text) => text as ToneSetId),
);

const voicingSchema = v.variant('kind', [
  v.strictObject({
    kind: v.literal('form'),
    form: v.picklist(['E', 'A', 'G', 'C', 'D', 'triad-321', 'triad-432']),
    full: v.boolean(),
  }),
  v.strictObject({
    kind: v.literal('family'),
    family: v.picklist(['triad', 'shell', 'drop-2', 'drop-3']),
    strings: v.pipe(v.array(stringSchema), v.minLength(3), v.maxLength(4)),
  }),
  v.strictObject({
    kind: v.literal('strings'),
    strings: v.pipe(v.array(stringSchema), v.minLength(1), v.maxLength(10)),
  }),
  v.strictObject({ kind: v.literal('any') }),
]);

const mapSchema: v.GenericSchema<unknown, MapChart> = v.strictObject({
  kind: v.literal('map'),
  instrument: instrumentIdSchema,
  root: noteSchema,
  range: rangeSchema,
  chord: v.picklist(qualities),
  pentatonic: v.picklist(scales),
  scale: v.picklist(scales),
  upTo: v.picklist(['chord', 'pentatonic', 'scale']),
});

/** Only the shape; whether the exercise can be asked is `checkExercise`'s to say. */
export const exerciseSchema: v.GenericSchema<unknown, Exercise> = v.variant('kind', [
  v.strictObject({
    kind: v.literal('find'),
    ...taskEntries,
    wanted: v.exactOptional(v.picklist(['one', 'every'])),
  }),
  v.strictObject({
    kind: v.literal('name'),
    ...taskEntries,
    place: placeSchema,
    wanted: v.picklist(['note', 'interval', 'degree']),
  }),
  v.strictObject({
    kind: v.literal('build'),
    ...taskEntries,
    ...extraEntries,
    quality: v.picklist(qualities),
    bass: v.exactOptional(noteSchema),
    voicing: voicingSchema,
  }),
  v.strictObject({
    kind: v.literal('scale'),
    ...taskEntries,
    ...extraEntries,
    scale: toneSetSchema,
    oneString: v.exactOptional(v.literal(true)),
    perString: v.exactOptional(
      v.strictObject({ notes: v.picklist([2, 3, 4]), rootAt: v.picklist([1, 2, 3, 4]) }),
    ),
    order: v.exactOptional(v.picklist(['up', 'down', 'up-and-down'])),
    coverage: v.picklist(['every-pitch', 'every-tone']),
    rootFinger: fingerSchema,
  }),
]);

/** Whether it can be drawn is `checkChart`'s to say. */
export const chartSchema: v.GenericSchema<unknown, Chart> = v.union([mapSchema, exerciseSchema]);
