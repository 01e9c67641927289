// SPDX-License-Identifier: MIT
#include "input/digest.hpp"

#include <fmt/format.h>
#include <nettle/sha2.h>

#include <array>

namespace faywright {

std::string sha256_of(std::string_view bytes) {
    sha256_ctx context;
    sha256_init(&context);
    sha256_update(&context, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
    std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
    sha256_digest(&context, digest.size(), digest.data());
    return fmt::format("{:02x}", fmt::join(digest, ""));
}

}  // namespace faywright
