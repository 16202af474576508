declare module "*.wasm?url" {
  const url: string;
  export default url;
}
declare module "*.json?url" {
  const url: string;
  export default url;
}
declare module "*/wasm_exec.js";
