// What keeps a question: the address of the page, a file, the clipboard.

export function start() {}
