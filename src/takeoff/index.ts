/** What to buy and how to cut it, from the placed structure; prices, orders, and whom to hire. */
export * from './cutting/index.js';
