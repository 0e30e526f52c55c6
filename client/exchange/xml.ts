import { XMLBuilder, XMLParser } from 'fast-xml-parser';
import { failure, success, type Result } from '../../shared/lib/result.ts';

/** An element as we read and write it: what it holds is other elements or text, never both. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  readonly text: string;
}

type Content = string | number | readonly XmlElement[];

/** `element('fret', 5)`, `element('root', [element('root-step', 'E')])`. */
export function element(
  name: string,
  content: Content = [],
  attributes: XmlElement['attributes'] = {},
): XmlElement {
  return typeof content === 'object'
    ? { name, attributes, children: content, text: '' }
    : { name, attributes, children: [], text: String(content) };
}

/** The first child of that name, or what one finds going on from there: `childOf(note, 'pitch', 'step')`. */
export function childOf(parent: XmlElement | undefined, ...path: readonly string[]): XmlElement | undefined {
  let found = parent;
  for (const name of path) found = found?.children.find((child) => child.name === name);
  return found;
}

export function childrenOf(parent: XmlElement | undefined, name: string): readonly XmlElement[] {
  return parent?.children.filter((child) => child.name === name) ?? [];
}

/** How both directions of the library keep the order of elements: a name with its content, attributes beside it. */
type Ordered = Readonly<Record<string, readonly Ordered[] | Readonly<Record<string, string>> | string>>;
const attributesKey = ':@';
const textKey = '#text';
const ordered = { preserveOrder: true, ignoreAttributes: false, attributeNamePrefix: '' } as const;

/** A whole document, with its declaration; the document type is written as it is given. */
export function writeXml(root: XmlElement, documentType: string): string {
  const builder = new XMLBuilder({ ...ordered, format: true, indentBy: ' ', suppressEmptyNode: true });
  const body = builder.build([orderedOf(root)]) as string;
  return `<?xml version="1.0" encoding="UTF-8"?>\n${documentType}\n${body.trimStart()}`;
}

function orderedOf({ name, attributes, children, text }: XmlElement): Ordered {
  const content = children.length > 0 ? children.map(orderedOf) : text === '' ? [] : [{ [textKey]: text }];
  return { [name]: content, [attributesKey]: attributes };
}

/** The library's own limit is about as high; a score is nested nine deep. */
const deepest = 40;

/**
 * The root element of a document that comes from outside. Nothing is fetched and nothing expanded: a document that
 * declares anything itself is refused, and of entities only the five of XML and characters by number are read.
 */
export function readXml(text: string): Result<XmlElement, string> {
  // Up to the next tag only: many of them would else be looked through to the end, each.
  if (/<!DOCTYPE[^<>]*\[|<!ENTITY/i.test(text))
    return failure('The file declares entities of its own. That is not read, for they can do harm.');
  const parser = new XMLParser({
    ...ordered,
    parseTagValue: false,
    parseAttributeValue: false,
    processEntities: false,
    maxNestedTags: deepest,
  });
  try {
    const roots = (parser.parse(text, true) as readonly Ordered[])
      .map(elementOf)
      .filter(({ name }) => !name.startsWith('?'));
    const [root] = roots;
    if (root && roots.length === 1) return success(root);
  } catch {
    // Not well-formed, nested too deep, or with names that mean something to the language.
  }
  return failure('The file is no XML that can be read. It may have been cut off.');
}

function elementOf(ordered: Ordered): XmlElement {
  const name = Object.keys(ordered).find((key) => key !== attributesKey) ?? '';
  const content = (ordered[name] ?? []) as readonly Ordered[];
  const written = (ordered[attributesKey] ?? {}) as Readonly<Record<string, string>>;
  return {
    name,
    attributes: Object.fromEntries(Object.entries(written).map(([key, value]) => [key, decoded(value)])),
    children: content.filter((part) => !(textKey in part)).map(elementOf),
    text: content.map((part) => decoded(textIn(part))).join(''),
  };
}

function textIn(part: Ordered): string {
  const text = part[textKey];
  return typeof text === 'string' ? text : '';
}

const named: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

/** The five entities of XML and characters by number; anything else stays as it is written. */
function decoded(text: string): string {
  return text.replace(
    /&(?:#x([\da-f]{1,6})|#(\d{1,7})|(lt|gt|amp|quot|apos));/gi,
    (whole, hex, decimal, name) => {
      if (typeof name === 'string') return named[name.toLowerCase()] ?? whole;
      const code = typeof hex === 'string' ? parseInt(hex, 16) : Number(decimal);
      return code <= 0x10_ff_ff ? String.fromCodePoint(code) : whole;
    },
  );
}
