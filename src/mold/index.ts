export { type Layout, layOut } from './layout.ts';
export * from './mold.ts';
export * from './parting/index.ts';
export * from './parting-surface.ts';
export * from './turned.ts';
export * from './undercut.ts';
export * from './work.ts';
