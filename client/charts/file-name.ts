const longest = 60;

/** A name that every system takes, made of what the file holds: "e-minor-c-form.svg". */
export function fileName(words: string, ending: string): string {
  const plain = words
    .replace(/[♭𝄫]/gu, ' flat ')
    .replace(/[♯𝄪]/gu, ' sharp ')
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{Mark}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, longest)
    .replace(/^-+|-+$/g, '');
  return `${plain === '' ? 'chart' : plain}.${ending}`;
}
