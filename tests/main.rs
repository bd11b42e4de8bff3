//! Placeholder.

#[cfg(test)]
mod http;
