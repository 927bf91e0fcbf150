// The header that shows that a request comes from a page of this application; a form's hidden field does the same.
export function csrfHeader() {
  const token = document.querySelector("meta[name=csrf]");
  return token ? { [token.dataset.header]: token.content } : {};
}
