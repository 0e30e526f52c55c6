import espeak from 'espeak-ng';
import { resampled } from './resample.ts';
import { sampleRate } from './samples.ts';

/** Voices of the synthesizer, each with what it reads: `+f2` and the like vary the speaker. */
export const voices = [
  { voice: 'en-us', pitch: 50, language: 'english' },
  { voice: 'en-gb+f2', pitch: 55, language: 'english' },
  { voice: 'en-us+m3', pitch: 35, language: 'english' },
  { voice: 'en-gb-scotland+f4', pitch: 65, language: 'english' },
  { voice: 'en-us+croak', pitch: 30, language: 'english' },
  { voice: 'en-gb-x-rp+f5', pitch: 80, language: 'english' },
  { voice: 'de', pitch: 45, language: 'german' },
  { voice: 'de+f3', pitch: 60, language: 'german' },
  { voice: 'de+m7', pitch: 40, language: 'german' },
  { voice: 'de+f1', pitch: 70, language: 'german' },
] as const;
export type Voice = (typeof voices)[number];

const sentences: Readonly<Record<Voice['language'], string>> = {
  english:
    'Put your second finger on the next string, and leave the thumb behind the neck. Who has found it? Take your time, ' +
    'we are not in a hurry. One, two, three, four. Now the same thing again, a little slower. Could you open the window ' +
    'please? It is rather warm in here. I have tuned mine already, but the fifth string is still a bit flat. Listen to how ' +
    'it sounds when only three strings ring. No, the other one. Oh, I see, that was the higher string! Are we all there? ' +
    'Next week we meet an hour earlier, because the hall is taken. My brother plays the drums, and he is always too loud. ' +
    'Hmm, I am not sure. Let me try it once more. Yeah, well, maybe. Does anybody have a spare string?',
  german:
    'Setz den zweiten Finger auf die nächste Saite, und lass den Daumen hinter dem Hals. Wer hat es gefunden? Lasst euch ' +
    'Zeit, wir haben es nicht eilig. Eins, zwei, drei, vier. Und jetzt das Ganze noch einmal, etwas langsamer. Kannst du ' +
    'bitte das Fenster aufmachen? Es ist ziemlich warm hier. Ich habe schon gestimmt, aber die fünfte Saite ist noch ein ' +
    'wenig zu tief. Hört mal, wie es klingt, wenn nur drei Saiten schwingen. Nein, die andere. Ach so, das war die höhere ' +
    'Saite! Sind wir alle da? Nächste Woche treffen wir uns eine Stunde früher, weil der Saal belegt ist. Mein Bruder ' +
    'spielt Schlagzeug, und er ist immer zu laut. Hm, ich bin nicht sicher. Lass es mich noch einmal versuchen.',
};

/** What our own sentences sound like in that voice, some 40 seconds, so many words a minute. */
export async function speech({ voice, pitch, language }: Voice, words = 160): Promise<Float32Array> {
  const args = ['-w', 'out.wav', '-v', voice, '-p', String(pitch), '-s', String(words), sentences[language]];
  const { now } = Date;
  const run = await espeak({
    arguments: args,
    print: () => undefined,
    printErr: () => undefined,
    // It draws its breath from the clock: at the same hour it says everything alike.
    preRun: () => (Date.now = () => 0),
    postRun: () => (Date.now = now),
  });
  const file = run.FS.readFile('out.wav');
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const rate = view.getUint32(24, true);
  const samples = Float32Array.from(
    { length: (file.length - 44) >> 1 },
    (_, at) => view.getInt16(44 + 2 * at, true) / 32768,
  );
  return resampled(samples, rate / sampleRate);
}
