/** Letters of other alphabets that look like a Latin one, in either case (Unicode UTS 39, "confusables"). */
const lookAlikes: Readonly<Record<string, string>> = {
  // Cyrillic
  ...{
    а: 'a',
    в: 'b',
    с: 'c',
    ԁ: 'd',
    е: 'e',
    һ: 'h',
    н: 'h',
    і: 'i',
    ј: 'j',
    к: 'k',
    м: 'm',
    о: 'o',
    р: 'p',
  },
  ...{ ԛ: 'q', ѕ: 's', т: 't', у: 'y', ѵ: 'v', ԝ: 'w', х: 'x' },
  // Greek
  ...{ α: 'a', β: 'b', ε: 'e', ζ: 'z', η: 'h', ι: 'i', κ: 'k', μ: 'm', ν: 'n', ο: 'o', ρ: 'p', τ: 't' },
  ...{ υ: 'y', χ: 'x' },
  // Latin without its dot
  ı: 'i',
};

/**
 * What two names are compared by: without regard to case, accents, what can't be seen, and letters of other
 * alphabets that look alike. `nameKey(' KÁYA ')` is "kaya".
 */
export function nameKey(name: string): string {
  const letters = name
    .normalize('NFKD')
    .replace(/[\p{M}\p{Default_Ignorable_Code_Point}]/gu, '')
    .toLowerCase()
    // "İ" comes apart only now.
    .replace(/\p{M}/gu, '');
  return Array.from(letters, (letter) => lookAlikes[letter] ?? letter)
    .join('')
    .replace(/\s+/g, ' ')
    .trim();
}
