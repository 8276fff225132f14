// @ts-check
// Handing a file to whoever looks at the page.

/**
 * Saves text as a file, where the browser puts downloads.
 * @param {string} text
 * @param {string} name see fileName
 * @param {string} [type]
 */
export function download(text, name, type = 'application/json') {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], {type: `${type};charset=utf-8`}));
  link.download = name;
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000); // some engines read it late
}
