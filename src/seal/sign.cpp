#include "seal/sign.h"

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

namespace jambline::seal {

namespace {
void ready() {
  static const bool done = sodium_init() >= 0;
  if (!done) std::abort();
}

Error refusal(std::string operation, const std::filesystem::path& file, int reason) {
  const Code code = reason == ENOENT                                         ? Code::NoSuchFile
                    : reason == ENOSPC || reason == EDQUOT                   ? Code::DiskFull
                    : reason == EROFS || reason == EACCES || reason == EPERM ? Code::ReadOnly
                                                                             : Code::FileFailed;
  return Error{code, std::move(operation), file.filename().string(), {}}.with("cause",
                                                                              strerror(reason));
}

struct Descriptor {
  int fd;
  ~Descriptor() {
    if (fd >= 0) close(fd);
  }
};
}  // namespace

DeviceId device_of(const Key& key) {
  const Hash hash = sha256(key.bytes);
  DeviceId device;
  std::memcpy(device.bytes.data(), hash.bytes.data(), DeviceId::size);
  return device;
}

SigningKey SigningKey::from_seed(const std::array<std::uint8_t, 32>& seed) {
  ready();
  SigningKey out;
  crypto_sign_seed_keypair(out.key_.bytes.data(), out.secret_.data(), seed.data());
  return out;
}

SigningKey SigningKey::make(Random& random) {
  std::array<std::uint8_t, 32> seed;
  random.fill(seed);
  SigningKey out = from_seed(seed);
  sodium_memzero(seed.data(), seed.size());
  return out;
}

std::array<std::uint8_t, 32> SigningKey::seed() const {
  std::array<std::uint8_t, 32> out;
  crypto_sign_ed25519_sk_to_seed(out.data(), secret_.data());
  return out;
}

Result<SigningKey> SigningKey::load(const std::filesystem::path& file) {
  const Descriptor in{open(file.c_str(), O_RDONLY | O_CLOEXEC)};
  if (in.fd < 0) return fail(refusal("read key", file, errno));
  char text[80];
  const ssize_t count = read(in.fd, text, sizeof text);
  if (count < 0) return fail(refusal("read key", file, errno));
  std::string_view line(text, static_cast<std::size_t>(count));
  if (line.ends_with('\n')) line.remove_suffix(1);
  std::array<std::uint8_t, 32> seed;
  if (line.size() != 64 || !from_hex(line, seed))
    return fail(Error{Code::Malformed, "read key", file.filename().string(), {}}.with(
        "cause", "not one line of 64 hex signs"));
  SigningKey out = from_seed(seed);
  sodium_memzero(seed.data(), seed.size());
  sodium_memzero(text, sizeof text);
  return out;
}

Status SigningKey::save(const std::filesystem::path& file) const {
  const std::string text =
      to_hex(std::span<const std::uint8_t>(secret_).first<32>()) + "\n";  // the seed comes first
  const auto folder = file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
  int reason = 0;
  {
    const Descriptor out{open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600)};
    if (out.fd < 0) return fail(refusal("write key", file, errno));
    errno = EIO;
    if (write(out.fd, text.data(), text.size()) != static_cast<ssize_t>(text.size()) ||
        fsync(out.fd) != 0)
      reason = errno;
  }
  if (reason != 0) {
    unlink(file.c_str());  // a part of a key is no key
    return fail(refusal("write key", file, reason));
  }
  const Descriptor directory{open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)};
  if (directory.fd < 0 || fsync(directory.fd) != 0) return fail(refusal("write key", file, errno));
  return {};
}

Signature SigningKey::sign(std::span<const std::uint8_t> message) const {
  Signature out;
  crypto_sign_detached(out.bytes.data(), nullptr, message.data(), message.size(), secret_.data());
  return out;
}

bool verify(const Key& key, std::span<const std::uint8_t> message, const Signature& signature) {
  ready();
  return crypto_sign_verify_detached(signature.bytes.data(), message.data(), message.size(),
                                     key.bytes.data()) == 0;
}

}  // namespace jambline::seal
