//! The policy: scene and text in, decision out.
