declare global {
  namespace App {
    interface PageState {
      /** Step of the lesson this entry of the browser's history stands for. */
      step?: number;
    }
  }
}
export {};
