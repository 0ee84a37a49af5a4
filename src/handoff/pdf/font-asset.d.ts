/** A font as the bundler hands it over: a data URL, the same in Node, worker and page. */
declare module '*.ttf?inline' {
  const dataUrl: string;
  export default dataUrl;
}
