// The texts of the scripts, in the language of the page; the server writes them into data blocks.

const texts = {};
for (const block of document.querySelectorAll("script[data-words]")) Object.assign(texts, JSON.parse(block.textContent));

/** Return the text of a key with its places filled: `say("question.read_as", { value: "2.5 bar" })`. */
export function say(key, places = {}) {
  const text = texts[key];
  if (text === undefined) throw new Error(`no words for ${key}`);
  return text.replace(/\{(\w+)\}/g, (whole, name) => (name in places ? String(places[name]) : whole));
}

/** The language of the page, as `language` of a request takes it. */
export const language = document.documentElement.lang;
