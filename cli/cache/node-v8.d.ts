import 'node:v8';

// Documented by Node as what a subclass may put its own in place of, left out of its types.
declare module 'node:v8' {
  interface DefaultDeserializer {
    _readHostObject(): NodeJS.TypedArray;
  }
}
