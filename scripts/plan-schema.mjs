// `node scripts/plan-schema.mjs [FILE]`: writes the published form of a plan's file, docs/plan.schema.json.
import { writeFileSync } from 'node:fs';
import process from 'node:process';
import { toJsonSchema } from '@valibot/to-json-schema';
import { format, resolveConfig } from 'prettier';
import { runnerImport } from 'vite';

const options = { logLevel: 'error' };
const { module: file } = await runnerImport('client/exchange/plan-file.ts', options);
const { module: scales } = await runnerImport('shared/theory/tables/scales.ts', options);
const { module: chords } = await runnerImport('shared/theory/tables/chords.ts', options);

/** What is checked by a function: which texts are a scale or an arpeggio. */
const arpeggios = Object.keys(chords.chordTable).map((quality) => `arpeggio-${quality}`);
const toneSet = { type: 'string', enum: [...Object.keys(scales.scaleTable), ...arpeggios] };

const { $schema, ...schema } = toJsonSchema(file.planFileSchema, {
  target: 'draft-2020-12',
  typeMode: 'input',
  errorMode: 'ignore',
  overrideAction: ({ valibotAction }) => (valibotAction.type === 'check' ? toneSet : undefined),
});
const published = {
  $schema,
  title: 'A plan of Rootcall, version 1',
  description:
    'Made from the schema that a plan is read by. A file may fit and still hold an exercise that can’t be asked; such a one is left out when it is taken.',
  ...schema,
};
const path = process.argv[2] ?? 'docs/plan.schema.json';
const style = await resolveConfig('docs/plan.schema.json');
writeFileSync(path, await format(JSON.stringify(published), { ...style, parser: 'json' }));
