import { readFileSync } from 'node:fs';
import { validateXML } from 'xmllint-wasm';

const schema = readFileSync('tests/references/standards/musicxml-4.0-subset.xsd', 'utf8');

/** What the schema says against a document: empty where it is valid. The document type is not looked up. */
export async function schemaErrors(document: string): Promise<readonly string[]> {
  const { errors } = await validateXML({
    xml: [{ fileName: 'document.xml', contents: document }],
    schema: [{ fileName: 'musicxml.xsd', contents: schema }],
    maxMemoryPages: 4096,
  });
  return errors.map(({ message }) => message);
}
