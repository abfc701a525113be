/// <reference types="vite/client" />

/** JSON Schema of the cabinet file. */
declare module 'virtual:file-schema' {
  const schema: object;
  export default schema;
}

interface ImportMetaEnv {
  /** Of the page, and of the engine in it. */
  readonly VERSION: string;
}
