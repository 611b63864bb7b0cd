// The parser alone: the package's main entry also loads its dictionary of CSS, which nobody here asks.
declare module 'css-tree/parser' {
  export { parse as default } from 'css-tree';
}
