// What only a running script needs of a field, made here so that the page stays light: the pointer by which it is found,
// and the places for what was read and for what is wrong.

function place(field, end) {
  const made = document.createElement("p");
  made.className = end;
  made.id = `${field.id}-${end}`;
  field.parentElement.append(made);
  return made.id;
}

function dressed(field) {
  const isText = field.tagName === "INPUT";
  field.dataset.pointer = field.name;
  const ids = (isText ? ["also", "fault"] : ["fault"]).map((end) => place(field, end));
  field.setAttribute("aria-describedby", [field.getAttribute("aria-describedby") ?? "", ...ids].join(" ").trim());
  if (!isText) return;
  // Set here and not in the page: without a script the browser itself brings back what was typed.
  field.autocomplete = "off";
  field.autocapitalize = "off";
  field.spellcheck = false;
  field.enterKeyHint = "next";
}

/** Make the fields of the form ready for the script. */
export function dress(form) {
  form.querySelectorAll("[name^='/']").forEach(dressed);
}
