// Makes reference values with KDL (Orocos Kinematics and Dynamics Library) for the tests of org.standclear.core.
// Usage: reference OUTPUT-FOLDER SEED. Angles in degrees, lengths in mm, speeds in mm/s or units/s.
#include <kdl/chain.hpp>
#include <kdl/chainfksolverpos_recursive.hpp>
#include <kdl/chainjnttojacsolver.hpp>
#include <kdl/velocityprofile_trap.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

namespace {

const double degree = std::acos(-1.0) / 180.0;
std::mt19937_64 source;

double between(double low, double high) {
    // own scaling instead of std::uniform_real_distribution, whose sequence differs between libraries
    return low + (high - low) * static_cast<double>(source() >> 11) / 9007199254740992.0;
}

FILE *open(const std::string &folder, const char *name, const char *header, unsigned long seed) {
    FILE *file = std::fopen((folder + "/" + name).c_str(), "w");
    if (!file) std::exit(1);
    std::fprintf(file, "# made with KDL by docs/reference/kdl/make-reference.sh, seed %lu\n%s\n", seed, header);
    return file;
}

struct Pose {
    KDL::Frame frame;
    double speed;
};

Pose evaluate(const KDL::Chain &chain, const KDL::JntArray &q, const KDL::JntArray &rate) {
    Pose pose;
    KDL::ChainFkSolverPos_recursive forward(chain);
    forward.JntToCart(q, pose.frame);
    KDL::Jacobian jacobian(chain.getNrOfJoints());
    KDL::ChainJntToJacSolver solver(chain);
    solver.JntToJac(q, jacobian);
    Eigen::VectorXd twist = jacobian.data * rate.data;
    pose.speed = twist.head<3>().norm();
    return pose;
}

void scara(FILE *file) {
    for (int i = 0; i < 400; i++) {
        double l1 = between(80, 600), l2 = between(80, 600);
        double ox = between(-80, 80), oy = between(-80, 80), oz = between(-200, 0);
        double q1 = between(-180, 180), q2 = between(-170, 170), q3 = between(0, 400), q4 = between(-360, 360);
        double r1 = between(-500, 500), r2 = between(-700, 700), r3 = between(-900, 900), r4 = between(-1500, 1500);
        using namespace KDL;
        Chain chain;
        chain.addSegment(Segment(Joint(Joint::RotZ), Frame(Vector(l1, 0, 0))));
        chain.addSegment(Segment(Joint(Joint::RotZ), Frame(Vector(l2, 0, 0))));
        chain.addSegment(Segment(Joint(Joint::TransZ)));
        chain.addSegment(Segment(Joint(Joint::RotZ), Frame(Vector(ox, oy, oz))));
        JntArray q(4), rate(4);
        q(0) = q1 * degree, q(1) = q2 * degree, q(2) = q3, q(3) = q4 * degree;
        rate(0) = r1 * degree, rate(1) = r2 * degree, rate(2) = r3, rate(3) = r4 * degree;
        Pose pose = evaluate(chain, q, rate);
        std::fprintf(file, "%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g\n",
                l1, l2, ox, oy, oz, q1, q2, q3, q4, r1, r2, r3, r4,
                pose.frame.p.x(), pose.frame.p.y(), pose.frame.p.z(), pose.speed);
    }
}

void gantry(FILE *file) {
    for (int i = 0; i < 200; i++) {
        double ox = between(-80, 80), oy = between(-80, 80), oz = between(-200, 0);
        double q1 = between(-500, 500), q2 = between(-500, 500), q3 = between(0, 400), q4 = between(-360, 360);
        double r1 = between(-900, 900), r2 = between(-900, 900), r3 = between(-900, 900), r4 = between(-1500, 1500);
        using namespace KDL;
        Chain chain;
        chain.addSegment(Segment(Joint(Joint::TransX)));
        chain.addSegment(Segment(Joint(Joint::TransY)));
        chain.addSegment(Segment(Joint(Joint::TransZ)));
        chain.addSegment(Segment(Joint(Joint::RotZ), Frame(Vector(ox, oy, oz))));
        JntArray q(4), rate(4);
        q(0) = q1, q(1) = q2, q(2) = q3, q(3) = q4 * degree;
        rate(0) = r1, rate(1) = r2, rate(2) = r3, rate(3) = r4 * degree;
        Pose pose = evaluate(chain, q, rate);
        std::fprintf(file, "%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g\n",
                ox, oy, oz, q1, q2, q3, q4, r1, r2, r3, r4,
                pose.frame.p.x(), pose.frame.p.y(), pose.frame.p.z(), pose.speed);
    }
}

// Standard Denavit-Hartenberg rows a, alpha, d with a variable theta: Rz(theta) Tz(d) Tx(a) Rx(alpha).
void articulated(FILE *file) {
    for (int i = 0; i < 300; i++) {
        double a[6], alpha[6], d[6], q[6], r[6];
        using namespace KDL;
        Chain chain;
        JntArray position(6), rate(6);
        for (int j = 0; j < 6; j++) {
            a[j] = between(-50, 450), alpha[j] = 90.0 * std::floor(between(-1, 2)), d[j] = between(-150, 450);
            q[j] = between(-180, 180), r[j] = between(-300, 300);
            chain.addSegment(Segment(Joint(Joint::RotZ), Frame::DH(a[j], alpha[j] * degree, d[j], 0)));
            position(j) = q[j] * degree, rate(j) = r[j] * degree;
        }
        Pose pose = evaluate(chain, position, rate);
        for (int j = 0; j < 6; j++) std::fprintf(file, "%.17g,%.17g,%.17g,", a[j], alpha[j], d[j]);
        for (int j = 0; j < 6; j++) std::fprintf(file, "%.17g,", q[j]);
        for (int j = 0; j < 6; j++) std::fprintf(file, "%.17g,", r[j]);
        const double *m = pose.frame.M.data;
        std::fprintf(file, "%.17g,%.17g,%.17g,", pose.frame.p.x(), pose.frame.p.y(), pose.frame.p.z());
        for (int k = 0; k < 9; k++) std::fprintf(file, "%.17g,", m[k]);
        std::fprintf(file, "%.17g\n", pose.speed);
    }
}

// Arms whose last three axes meet in one point, with a tool; speeds of the tool point, of its turning (rad/s), and of the
// fastest link end: the origin of every frame, and the corner between d and a of a row.
void spherical(FILE *file) {
    for (int i = 0; i < 300; i++) {
        double a[6] = {0}, alpha[6] = {0}, d[6] = {0}, q[6], r[6], offset[3];
        const double quarter[2] = {-90, 90};
        auto sign = [&] { return quarter[between(0, 1) < 0.5 ? 0 : 1]; };
        alpha[0] = sign(), alpha[1] = between(0, 1) < 0.8 ? 0 : 180, alpha[2] = sign(), alpha[3] = sign(), alpha[4] = sign();
        a[0] = between(0, 1) < 0.3 ? 0 : between(-60, 200), d[0] = between(0, 500);
        a[1] = between(150, 600) * (between(0, 1) < 0.7 ? 1 : -1), d[1] = between(0, 1) < 0.5 ? 0 : between(-150, 150);
        a[2] = between(0, 1) < 0.3 ? 0 : between(-150, 150), d[2] = between(0, 1) < 0.5 ? 0 : between(-150, 150);
        d[3] = between(150, 600), d[5] = between(0, 1) < 0.2 ? 0 : between(40, 160);
        for (double &one : offset) one = between(-150, 150);
        using namespace KDL;
        Chain chain, bare;
        JntArray position(6), rate(6);
        for (int j = 0; j < 6; j++) {
            q[j] = between(-180, 180), r[j] = between(-300, 300);
            Frame frame = Frame::DH(a[j], alpha[j] * degree, d[j], 0);
            if (j == 5) chain.addSegment(Segment(Joint(Joint::RotZ), frame * Frame(Vector(offset[0], offset[1], offset[2]))));
            else chain.addSegment(Segment(Joint(Joint::RotZ), frame));
            // the same arm with each row cut at its corner
            bare.addSegment(Segment(Joint(Joint::RotZ), Frame(Vector(0, 0, d[j]))));
            bare.addSegment(Segment(Joint(Joint::None), Frame(Rotation::RotX(alpha[j] * degree), Vector(a[j], 0, 0))));
            position(j) = q[j] * degree, rate(j) = r[j] * degree;
        }
        Pose pose = evaluate(chain, position, rate);
        ChainJntToJacSolver solver(chain), cut(bare);
        Jacobian jacobian(6);
        solver.JntToJac(position, jacobian);
        double turning = Eigen::VectorXd(jacobian.data * rate.data).tail<3>().norm();
        double fastest = 0;
        for (int segments = 1; segments <= 12; segments++) {
            cut.JntToJac(position, jacobian, segments);
            fastest = std::max(fastest, Eigen::VectorXd(jacobian.data * rate.data).head<3>().norm());
        }
        for (int j = 0; j < 6; j++) std::fprintf(file, "%.17g,%.17g,%.17g,", a[j], alpha[j], d[j]);
        for (double one : offset) std::fprintf(file, "%.17g,", one);
        for (int j = 0; j < 6; j++) std::fprintf(file, "%.17g,", q[j]);
        for (int j = 0; j < 6; j++) std::fprintf(file, "%.17g,", r[j]);
        const double *m = pose.frame.M.data;
        std::fprintf(file, "%.17g,%.17g,%.17g,", pose.frame.p.x(), pose.frame.p.y(), pose.frame.p.z());
        for (int k = 0; k < 9; k++) std::fprintf(file, "%.17g,", m[k]);
        std::fprintf(file, "%.17g,%.17g,%.17g\n", pose.speed, turning, fastest);
    }
}

void trapezoid(FILE *file) {
    for (int i = 0; i < 400; i++) {
        // half of the draws around the border between triangle and trapezoid, v^2/a = D
        double v = between(0.01, 3), a = between(0.01, 10);
        double border = v * v / a;
        double distance = i % 2 == 0 ? border * between(0.2, 1.8) : between(0.001, 10);
        KDL::VelocityProfile_Trap profile(v, a);
        profile.SetProfile(0, distance);
        double total = profile.Duration();
        std::fprintf(file, "%.17g,%.17g,%.17g,%.17g,%.17g\n", distance, v, a, total, profile.Vel(total / 2));
    }
}

}  // namespace

int main(int count, char **words) {
    if (count != 3) return 64;
    std::string folder = words[1];
    unsigned long seed = std::strtoul(words[2], nullptr, 10);
    source.seed(seed);
    FILE *file = open(folder, "scara.csv", "l1,l2,ox,oy,oz,q1,q2,q3,q4,r1,r2,r3,r4,x,y,z,tool-speed", seed);
    scara(file);
    std::fclose(file);
    file = open(folder, "gantry.csv", "ox,oy,oz,q1,q2,q3,q4,r1,r2,r3,r4,x,y,z,tool-speed", seed);
    gantry(file);
    std::fclose(file);
    file = open(folder, "articulated.csv",
            "a1,alpha1,d1,a2,alpha2,d2,a3,alpha3,d3,a4,alpha4,d4,a5,alpha5,d5,a6,alpha6,d6,"
            "q1,q2,q3,q4,q5,q6,r1,r2,r3,r4,r5,r6,x,y,z,m11,m12,m13,m21,m22,m23,m31,m32,m33,tool-speed", seed);
    articulated(file);
    std::fclose(file);
    file = open(folder, "trapezoid.csv", "distance,speed,acceleration,duration,peak", seed);
    trapezoid(file);
    std::fclose(file);
    file = open(folder, "spherical.csv",
            "a1,alpha1,d1,a2,alpha2,d2,a3,alpha3,d3,a4,alpha4,d4,a5,alpha5,d5,a6,alpha6,d6,ox,oy,oz,"
            "q1,q2,q3,q4,q5,q6,r1,r2,r3,r4,r5,r6,x,y,z,m11,m12,m13,m21,m22,m23,m31,m32,m33,"
            "tool-speed,turning,fastest-link-end", seed);
    spherical(file);
    std::fclose(file);
    return 0;
}
