/** What is printed in place of the page, and only then. */
const alone = 'rootcall-print-alone';

/** Looks come by script: the page allows no style of its own to what is put into it. */
const sheetText = `
  .${alone} { display: none; }
  @media print {
    @page { margin: 15mm; }
    body > :not(.${alone}) { display: none !important; }
    body { background: #fff; margin: 0; padding: 0; }
    .${alone} { display: block; }
    .${alone} > * { break-inside: avoid; display: block; height: auto; max-height: 260mm; max-width: 100%; }
  }
`;

/** Opens the browser's way of printing, where a PDF can be saved too, with nothing but these elements on the page. */
export function printAlone(elements: readonly Element[], title: string): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(sheetText);
  const holder = document.createElement('div');
  holder.className = alone;
  holder.append(...elements);
  document.adoptedStyleSheets.push(sheet);
  document.body.append(holder);
  // The name that is proposed for the file.
  const before = document.title;
  document.title = title;
  addEventListener(
    'afterprint',
    () => {
      holder.remove();
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== sheet);
      document.title = before;
    },
    { once: true },
  );
  print();
}
